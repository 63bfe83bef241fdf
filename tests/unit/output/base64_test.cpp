#include "output/base64.h"

#include <doctest/doctest.h>

using baywright::output::base64;

TEST_CASE("base64 by the test vectors of RFC 4648, 10") {
  CHECK(base64("").empty());
  CHECK(base64("f") == "Zg==");
  CHECK(base64("fo") == "Zm8=");
  CHECK(base64("foo") == "Zm9v");
  CHECK(base64("foob") == "Zm9vYg==");
  CHECK(base64("fooba") == "Zm9vYmE=");
  CHECK(base64("foobar") == "Zm9vYmFy");
  CHECK(base64(std::string_view("\xFF\xFE\x00\xFB", 4)) == "//4A+w==");
}
