// `report`: one page for a customer, whole or none, in two languages, with nothing on it that a file could have put
// there.
#include "commands/run.h"

#include <algorithm>
#include <cctype>
#include <doctest/doctest.h>
#include <set>

using namespace baywright;

namespace {

const std::string laptop = test::source_path("models/builds/old-laptop.build.toml");
const std::string shelf = test::source_path("models/shelf/old-laptop.csv");
const std::string thin = test::source_path("models/builds/thin-desktop.build.toml");

std::string page_of(const std::vector<std::string>& options, int status) {
  const test::Folder folder;
  std::vector<std::string> arguments = {"report"};
  arguments.insert(arguments.end(), options.begin(), options.end());
  arguments.insert(arguments.end(), {"-o", "-"});
  const test::Run run = folder.run(arguments);
  CHECK(run.err == "");
  CHECK(run.status == status);
  CHECK(run.out.starts_with("<!DOCTYPE html>\n"));
  CHECK(run.out.ends_with("</html>\n"));
  return run.out;
}

bool has(const std::string& page, const std::string& what) {
  return page.find(what) != std::string::npos;
}

std::size_t count(const std::string& page, const std::string& what) {
  std::size_t out = 0;
  for (std::size_t at = page.find(what); at != std::string::npos; at = page.find(what, at + what.size())) ++out;
  return out;
}

/// The page without what `begin` opens and `end` closes.
std::string without(std::string page, const std::string& begin, const std::string& end) {
  for (std::size_t at = page.find(begin); at != std::string::npos; at = page.find(begin, at)) {
    const std::size_t close = page.find(end, at);
    REQUIRE(close != std::string::npos);
    page.erase(at, close + end.size() - at);
  }
  return page;
}

/// What is marked up, without styles and scripts.
std::string markup(const std::string& page) {
  return without(without(page, "<style>", "</style>"), "<script", "</script>");
}

/// Names of the elements in it, each with how often it is opened.
std::set<std::string> elements(const std::string& page) {
  std::set<std::string> out;
  for (std::size_t at = page.find('<'); at != std::string::npos; at = page.find('<', at + 1)) {
    std::size_t end = at + 1;
    while (end < page.size() && (std::isalnum(static_cast<unsigned char>(page[end])) != 0)) ++end;
    if (end > at + 1) out.insert(page.substr(at + 1, end - at - 1));
  }
  return out;
}

}  // namespace

TEST_CASE("the page of a shortlist takes the drive that the ranking takes, and says why the fastest is wasted") {
  const test::Folder folder;
  const test::Run rank = folder.run({"rank", shelf, "--build", laptop, "--daily", "30"});
  REQUIRE(rank.out.starts_with("Take Plain SATA card 2 TB: "));
  const std::string english = page_of({laptop, "--shortlist", shelf, "--daily", "30"}, 0);
  CHECK(has(english, "Take <bdi>Plain SATA card 2 TB</bdi>"));
  CHECK(has(english, "<bdi>Quick PCIe card 1 TB</bdi>, would be money wasted"));
  const std::string german = page_of({laptop, "--shortlist", shelf, "--daily", "30", "--language", "de"}, 0);
  CHECK(has(german, "<html lang=\"de\">"));
  CHECK(has(german, "Nehmen Sie <bdi>Plain SATA card 2 TB</bdi>"));
  CHECK(has(german, "0,054\u00A0<bdi>EUR</bdi>"));  // a decimal comma
  CHECK(has(german, "<div lang=\"en\">"));          // the figures stay English, and are marked so
}

TEST_CASE("the exit status says whether the drive on the page fits, or a plan makes it fit") {
  CHECK(has(page_of({thin, "--drive", "card with flat spreader"}, 0), "id=\"pictures\""));
  const std::string helped = page_of({thin, "--drive", "card with tall fins"}, 0);
  CHECK(has(helped, "id=\"plan\""));
  CHECK(has(helped, "does not fit as it is"));
  CHECK(has(helped, "<li>No heatsink: "));
  CHECK(count(helped, "do not pry") == 1);  // taking it off is a step of its own
  CHECK(!has(helped, "M.2 stand-off M2"));  // the file says that the slot has it: nothing to buy
  const std::string refused = page_of({laptop, "--drive", "card that was bought"}, 1);
  CHECK(!has(refused, "id=\"plan\""));
  CHECK(has(refused, "speaks <a class=\"term\" href=\"#word-sata\">SATA</a> only"));
}

TEST_CASE("a title and names that are markup stay text wherever they stand") {
  const test::Folder folder;
  const std::string evil = "\"><script>alert(1)</script> \u202E & '";
  std::string toml = "\\\"><script>alert(1)</script> \\u202E & '";
  std::string build = test::source_text("models/builds/old-laptop.build.toml");
  build = test::with(build, "\"Older laptop: one M.2 slot, wired for SATA\"", '"' + toml + '"');
  build = test::with(build, "name      = \"bottom cover\"", "name      = \"cover " + toml + '"');
  build = test::with(build, "name    = \"M.2 slot\"", "name    = \"slot " + toml + '"');
  folder.write("evil.build.toml", build);
  const std::string quoted = "\"\"><script>alert(1)</script> \u202E & '";
  folder.write("evil.csv",
               "name,use,bus,price (EUR),capacity,read,<b>odd</b>\n"
               "\"sata " +
                   quoted +
                   "\",m2/2280-D2-B+M,sata 6,80,1 TB,500,x\n"
                   "\"pcie " +
                   quoted + "\",m2/2280-D2-M,pcie 4.0 x4,70,1 TB,7000,x\n");
  for (const char* const language : {"en", "de"}) {
    CAPTURE(language);
    const test::Run run =
        folder.run({"report", "evil.build.toml", "--shortlist", "evil.csv", "--language", language, "-o", "-"});
    CHECK(run.err == "evil.csv: The column `<b>odd</b>` is not known here and passed over.\n");
    CHECK(run.status == 0);
    CHECK(!has(run.out, "<script>alert"));
    CHECK(!has(run.out, evil));
    CHECK(count(run.out, "&quot;&gt;&lt;script&gt;alert(1)&lt;/script&gt; \u202E &amp; &#39;") > 10);
    const std::set<std::string> there = elements(markup(run.out));
    CHECK(there.count("script") == 0);
    CHECK(there.count("b") == 0);
    // Between tags a name that turns the direction of writing ends within its own element.
    const std::string text = without(markup(run.out), "<svg class=\"plot\"", "</svg>");
    const std::string head = text.substr(0, text.find("<body>"));
    std::string body = text.substr(text.find("<body>"));
    body = without(body, "<bdi>", "</bdi>");
    for (std::size_t at = body.find("\u202E"); at != std::string::npos; at = body.find("\u202E", at + 1)) {
      const std::size_t open = body.rfind('<', at);
      CHECK(body.find('>', open) > at);  // in an attribute
    }
    CHECK(has(head, "\u2068\"&gt;") == false);
  }
}

TEST_CASE("a shortlist alone becomes a page with plot and table") {
  const test::Folder folder;
  const test::Run run = folder.run({"rank", shelf, "--html", "-o", "list.html", "--language", "de"});
  CHECK(run.status == 0);
  CHECK(run.out == "wrote list.html\n");
  CHECK(run.err == "");
  const std::string page = markup(folder.read("list.html"));
  CHECK(has(page, "<figure class=\"plot\">"));
  CHECK(count(page, "<tr role=\"row\"") == 6);  // the heading and five drives
  CHECK(!has(page, "<img"));
  CHECK(!has(page, "id=\"steps\""));
  test::check_refused(folder.run({"rank", shelf, "--html", "-o", "list.csv"}), 2, "baywright: ", "ends in .html");
  test::check_refused(folder.run({"rank", shelf, "--html"}), 2, "baywright: ", "--output");
  test::check_refused(folder.run({"rank", shelf, "-o", "list.html"}), 2, "baywright: ", "--html");
}

TEST_CASE("a page asks for nothing from any network") {
  for (const std::string& page : {page_of({laptop, "--shortlist", shelf}, 0), page_of({thin}, 0)}) {
    const std::string text = markup(page);
    CHECK(!has(text, "http:"));
    CHECK(!has(text, "https:"));
    CHECK(!has(text, "src=\"//"));
    CHECK(!has(page, "@import"));
    CHECK(!has(page, "url("));
    // Every source is in the page itself.
    CHECK(count(text, "src=\"") + count(text, "srcset=\"") == count(text, "=\"data:image/"));
    CHECK(count(text, "=\"data:image/") >= 2);
    CHECK(page.size() < 2'500'000);
  }
}

TEST_CASE("headings are in order, links lead somewhere, pictures and tables have words") {
  const std::string page = markup(page_of({laptop, "--shortlist", shelf, "--daily", "30", "--language", "de"}, 0));
  CHECK(count(page, "<h1") == 1);
  int last = 0;
  for (std::size_t at = page.find("<h"); at != std::string::npos; at = page.find("<h", at + 1)) {
    const char level = page[at + 2];
    if (level < '1' || level > '6' || std::isalpha(static_cast<unsigned char>(page[at + 3])) != 0) continue;
    CHECK(level - '0' <= last + 1);
    last = level - '0';
  }
  std::size_t links = 0;
  for (std::size_t at = page.find("href=\"#"); at != std::string::npos; at = page.find("href=\"#", at + 1)) {
    const std::string id = page.substr(at + 7, page.find('"', at + 7) - at - 7);
    CAPTURE(id);
    CHECK(count(page, " id=\"" + id + '"') == 1);
    ++links;
  }
  CHECK(links > 5);
  CHECK(count(page, "<img ") == count(page, " alt=\""));
  CHECK(!has(page, " alt=\"\""));
  CHECK(count(page, "<table") == count(page, "<caption"));
  // A phrase that the table does not have stands in brackets.
  for (std::size_t at = page.find('['); at != std::string::npos; at = page.find('[', at + 1))
    CHECK(std::islower(static_cast<unsigned char>(page[at + 1])) == 0);
  CHECK(has(page, "<main>"));
  CHECK(has(page, "<header>"));
  CHECK(has(page, "class=\"skip\" href=\"#answer\""));
  CHECK(has(page, "role=\"img\" aria-labelledby"));
}

TEST_CASE("without OpenGL the page has drawings, and says so") {
  const test::Folder folder;
  const test::Run run =
      folder.spawn("/usr/bin/env", {"__EGL_VENDOR_LIBRARY_FILENAMES=/dev/null", BAYWRIGHT_PROGRAM, "report", thin,
                                    "--drive", "card with tall fins", "-o", "y.html"});
  CHECK(run.status == 0);
  CHECK(run.err == "");
  CHECK(has(run.out, "with drawings"));
  CHECK(folder.names() == std::vector<std::string>{"y.html"});
  const std::string page = markup(folder.read("y.html"));
  CHECK(has(page, "the drawings stand here"));
  CHECK(count(page, "<img src=\"data:image/svg+xml;base64,") >= 2);
  CHECK(!has(page, "data:image/png"));
}

TEST_CASE("what cannot be meant is refused before anything is written") {
  const test::Folder folder;
  const auto refused = [&](std::vector<std::string> options, const std::string& place, const std::string& says) {
    CAPTURE(says);
    options.insert(options.begin(), "report");
    test::check_refused(folder.run(options), 2, place, says);
  };
  refused({laptop, "-o", "y.pdf"}, "baywright: ", "ends in .html");
  refused({laptop, "-o", "y.html", "--language", "fr"}, "baywright: ", "language");
  refused({laptop, "-o", "y.html", "--daily", "30"}, "baywright: ", "--shortlist");
  refused({laptop, "-o", "y.html", "--shortlist", shelf, "--drive", "card that was bought"}, "baywright: ", "--drive");
  refused({laptop, "-o", "y.html", "--shortlist", shelf, "--sort", "colour"}, "baywright: ", "--sort");
  refused({laptop, "-o", "y.html", "--shortlist", "no.csv"}, "no.csv", "no.csv");
  refused({laptop, "-o", "y.html", "--place", "M.2 slit"}, laptop, "did you mean `M.2 slot`?");
  refused({"no.build.toml", "-o", "y.html"}, "no.build.toml", "no.build.toml");
  CHECK(folder.names().empty());
  const test::Run full = folder.run({"report", laptop, "-o", "-"}, "/dev/full");
  CHECK(full.status == 3);
  const test::Run nowhere = folder.run({"report", laptop, "-o", "none/y.html"});
  CHECK(nowhere.status == 3);
  CHECK(folder.names().empty());
}
