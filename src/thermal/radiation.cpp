#include "thermal/radiation.h"

namespace baywright::thermal {

double radiated(double emissivity, double kelvin, double around) {
  return emissivity * stefan_boltzmann * (kelvin * kelvin + around * around) * (kelvin + around) * (kelvin - around);
}

}  // namespace baywright::thermal
