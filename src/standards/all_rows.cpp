#include "standards/all_rows.h"

#include "standards/adapters.h"
#include "standards/addin_cards.h"
#include "standards/boards.h"
#include "standards/drives.h"
#include "standards/fasteners.h"
#include "standards/general_tolerances.h"
#include "standards/m2.h"
#include "standards/mini_cards.h"
#include "standards/tools.h"

namespace baywright::standards {

std::vector<Rows> all_rows() {
  return {
      {"M.2 cards and sockets", m2::rows()},
      {"main boards", boards::rows()},
      {"drives", drives::rows()},
      {"mini cards", mini_cards::rows()},
      {"add-in cards", addin_cards::rows()},
      {"generic adapters and cables", adapters::rows()},
      {"fasteners", fasteners::rows()},
      {"tools", tools::rows()},
      {"general tolerances", general_tolerances::rows()},
  };
}

}  // namespace baywright::standards
