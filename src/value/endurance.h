#pragma once
// How much may be written and how long that lasts. TB and GB are decimal, a year has 365 days (as every maker's sheet
// that was seen has it).

namespace baywright::value {

inline constexpr double days_in_year = 365.0;
inline constexpr double gigabytes_in_terabyte = 1000.0;

/// Drive writes per day over so many years of warranty that add up to so many TB written.
[[nodiscard]] double writes_per_day(double tbw, double gigabytes, double years);
/// The other way round, TB.
[[nodiscard]] double terabytes_written(double writes_per_day, double gigabytes, double years);
/// Years in which so many TB are written at so many GB a day.
[[nodiscard]] double years_until(double terabytes, double gigabytes_a_day);
/// When a warranty of so many years ends that also ends with the TB written: the earlier of the two.
[[nodiscard]] double warranty_end(double years, double tbw, double gigabytes_a_day);
/// What the log of an NVMe drive counts: units of 1000 blocks of 512 bytes, begun ones included. TB.
[[nodiscard]] double terabytes_of_units(double data_units);

}  // namespace baywright::value
