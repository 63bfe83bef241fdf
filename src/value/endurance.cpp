#include "value/endurance.h"

#include <algorithm>

namespace baywright::value {

double writes_per_day(double tbw, double gigabytes, double years) {
  return tbw * gigabytes_in_terabyte / (days_in_year * years * gigabytes);
}

double terabytes_written(double writes_per_day, double gigabytes, double years) {
  return writes_per_day * days_in_year * years * gigabytes / gigabytes_in_terabyte;
}

double years_until(double terabytes, double gigabytes_a_day) {
  return terabytes * gigabytes_in_terabyte / (gigabytes_a_day * days_in_year);
}

double warranty_end(double years, double tbw, double gigabytes_a_day) {
  return std::min(years, years_until(tbw, gigabytes_a_day));
}

double terabytes_of_units(double data_units) {
  constexpr double bytes_in_unit = 1000.0 * 512.0;
  return data_units * bytes_in_unit / 1e12;
}

}  // namespace baywright::value
