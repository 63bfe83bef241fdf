#pragma once
// What a drive comes as, and what a place takes.
#include <string>

namespace baywright::parts {

/// Interface and bus are told apart from it: a 2.5-inch drive may speak SATA, SAS or PCIe.
enum class Form { m2, mini_card, drive_2_5, drive_3_5, device_5_25, e1_s, e1_l, e3_s, e3_l, add_in_card, soldered };

/// A drive in a case of a published size, screwed or slid into a bay.
[[nodiscard]] bool cased(Form form);

/// E1.S, E1.L, E3.S, E3.L: one connector for all, no holes, always on a backplane.
[[nodiscard]] bool of_edsff(Form form);

/// The trade's word for it: "M.2 card", "2.5-inch drive".
[[nodiscard]] std::string form_name(Form form);

/// "a" or "an", as that word wants it.
[[nodiscard]] std::string article(const std::string& word);

}  // namespace baywright::parts
