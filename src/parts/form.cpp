#include "parts/form.h"

#include <string_view>

namespace baywright::parts {

bool cased(Form form) {
  switch (form) {
    case Form::drive_2_5:
    case Form::drive_3_5:
    case Form::device_5_25:
    case Form::e1_s:
    case Form::e1_l:
    case Form::e3_s:
    case Form::e3_l:
      return true;
    case Form::m2:
    case Form::mini_card:
    case Form::add_in_card:
    case Form::soldered:
      return false;
  }
  return false;
}

bool of_edsff(Form form) {
  return form == Form::e1_s || form == Form::e1_l || form == Form::e3_s || form == Form::e3_l;
}

std::string form_name(Form form) {
  switch (form) {
    case Form::m2:
      return "M.2 card";
    case Form::mini_card:
      return "mini card";
    case Form::drive_2_5:
      return "2.5-inch drive";
    case Form::drive_3_5:
      return "3.5-inch drive";
    case Form::device_5_25:
      return "5.25-inch device";
    case Form::e1_s:
      return "E1.S drive";
    case Form::e1_l:
      return "E1.L drive";
    case Form::e3_s:
      return "E3.S drive";
    case Form::e3_l:
      return "E3.L drive";
    case Form::add_in_card:
      return "add-in card";
    case Form::soldered:
      return "soldered chip";
  }
  return {};
}

std::string article(const std::string& word) {
  // By sound: an M.2 card, an mSATA card, an E1.S drive, an x4 card, an add-in card.
  if (word.starts_with("M.2") || word.starts_with("mSATA") || word.starts_with("SATA")) return "an";
  return !word.empty() && std::string_view("aeioxAEIO8").find(word[0]) != std::string_view::npos ? "an" : "a";
}

}  // namespace baywright::parts
