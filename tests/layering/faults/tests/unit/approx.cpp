// A remark may say Approx.
const auto wanted = doctest::Approx(80.0);
TEST_CASE("one thing; and another") {}
