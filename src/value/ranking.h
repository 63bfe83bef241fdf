#pragma once
// Which offer comes first.
#include "value/appraisal.h"

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace baywright::value {

/// Columns that a list can be put in order by, or weighed by.
enum class Column { name, price, capacity, per_gigabyte, read, write, tbw, per_tbw, dwpd, years, warranty };
[[nodiscard]] std::string_view word(Column column);  // "price per GB", as on the command line
/// The refusal says what would be right.
[[nodiscard]] std::variant<Column, std::string> read_column(std::string_view text);

/// Its figure for an offer; none where it is missing, and of `name`. Speeds are those behind the slot's link.
[[nodiscard]] std::optional<double> figure_of(Column column, const Offer& offer, const Appraisal& appraisal);
[[nodiscard]] bool less_is_better(Column column);

struct Weight {
  Column column = Column::price;
  double weight = 1.0;  // above 0
};
/// "price=3,read=1". The refusal says what would be right.
[[nodiscard]] std::variant<std::vector<Weight>, std::string> read_weights(std::string_view text);

/// From 0 to 1 each figure of the drives is put between the worst and the best of the list, and the weighted mean is
/// the score. None where a weighed figure is missing: no guess stands in for it.
[[nodiscard]] std::vector<std::optional<double>> scores(std::span<const Offer> offers,
                                                        std::span<const Appraisal> appraisals,
                                                        std::span<const Weight> weights);

/// How well an offer goes where it should: what fits comes before what may, that before what does not.
enum class Standing { goes, may_go, not_known, goes_not };

/// Which offers no other beats, of those that are drives and may go where they should: the rest beats nothing either.
[[nodiscard]] std::vector<bool> unbeaten(std::span<const Offer> offers, std::span<const Appraisal> appraisals,
                                         std::span<const Standing> standings);

struct Order {
  std::optional<Column> column;  // else by the score, where there are weights; else by the price a gigabyte
  std::vector<Weight> weights;
};

/// Indices of the offers, best first: by standing, then drives before what is none, then as `order` says; what has no
/// figure there comes behind what has one; ties by the price of a gigabyte, then as listed. A list that is sorted by
/// name is sorted by nothing else.
[[nodiscard]] std::vector<std::size_t> ranked(std::span<const Offer> offers, std::span<const Appraisal> appraisals,
                                              std::span<const Standing> standings, const Order& order);

struct Choice {
  std::optional<std::size_t> taken;
  std::vector<std::size_t> passed_over;  // before it in the order, but not known to last
};
/// The first in that order to be taken: a drive that goes where it should, or, where no machine was asked, one of which
/// nothing says that it does not. Where any of these is known to last at what is written a day, the first such. None
/// where there is no such.
[[nodiscard]] Choice choice(std::span<const Offer> offers, std::span<const Appraisal> appraisals,
                            std::span<const Standing> standings, std::span<const std::size_t> order, bool in_a_machine);

/// The remark that a drive's cells are too dense for what is written a day; null: it has none.
[[nodiscard]] const Remark* dense_cells(const Appraisal& appraisal);
/// The first in that order that could be taken as well as `taken` (and is known to last, where that one is), whose
/// cells are known and not too dense for what is written a day; none where there is no such, or `taken` is such itself.
[[nodiscard]] std::optional<std::size_t> with_fewer_bits(std::span<const Offer> offers,
                                                         std::span<const Appraisal> appraisals,
                                                         std::span<const Standing> standings,
                                                         std::span<const std::size_t> order, std::size_t taken);

/// The drive with the fastest stated reading, wherever it goes; none where no drive states it.
[[nodiscard]] std::optional<std::size_t> fastest(std::span<const Offer> offers);

/// The drives that may go there and whose stated `read`, or else write, the slot holds to the same rate as that of
/// drive `i`, in that order and with `i` itself; empty where that one's is not held, or it does not go there.
[[nodiscard]] std::vector<std::size_t> held_alike(std::span<const Offer> offers, std::span<const Appraisal> appraisals,
                                                  std::span<const Standing> standings,
                                                  std::span<const std::size_t> order, std::size_t i, bool read);

}  // namespace baywright::value
