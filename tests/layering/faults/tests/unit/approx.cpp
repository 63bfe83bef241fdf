// A remark may say Approx.
const auto wanted = doctest::Approx(80.0);
