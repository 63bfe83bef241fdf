#include "output/html.h"

namespace baywright::output {

std::string escaped_html(std::string_view text) {
  std::string out;
  for (const char c : text) {
    const auto code = static_cast<unsigned char>(c);
    if (c == '&')
      out += "&amp;";
    else if (c == '<')
      out += "&lt;";
    else if (c == '>')
      out += "&gt;";
    else if (c == '"')
      out += "&quot;";
    else if (c == '\'')
      out += "&#39;";
    else if ((code >= 0x20 && code != 0x7F) || c == '\t' || c == '\n')
      out += c;
  }
  return out;
}

}  // namespace baywright::output
