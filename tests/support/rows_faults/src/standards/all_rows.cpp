#include "standards/all_rows.h"

#include "standards/lamps.h"

namespace baywright::standards {

std::vector<Rows> all_rows() {
  return {{"lamps", lamps::rows()}};
}

}  // namespace baywright::standards
