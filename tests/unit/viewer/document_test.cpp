// The open file: steps that can be undone, saving, what others do to the file, what a crash leaves.
#include "viewer/document.h"

#include "fit/check.h"

#include <array>
#include <chrono>
#include <doctest/doctest.h>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>
#include <unistd.h>

using namespace baywright;
using build::Edit;
using viewer::Document;
using viewer::Outside;
namespace fs = std::filesystem;

namespace {

std::string content(const fs::path& file) {
  std::ifstream in(file, std::ios::binary);
  std::stringstream all;
  all << in.rdbuf();
  return all.str();
}

/// A folder of its own with a copy of the thin desktop, removed in the end.
struct Desk {
  Desk() : folder(fs::temp_directory_path() / ("baywright-document-" + std::to_string(::getpid()))) {
    fs::remove_all(folder);
    fs::create_directories(folder);
    fs::copy_file(BAYWRIGHT_SOURCE "/models/builds/thin-desktop.build.toml", file());
    before = content(file());
  }
  ~Desk() { fs::remove_all(folder); }
  Desk(const Desk&) = delete;
  Desk& operator=(const Desk&) = delete;

  [[nodiscard]] fs::path file() const { return folder / "desk.build.toml"; }
  [[nodiscard]] Document open() const {
    auto opened = Document::open(file());
    if (const auto* fault = std::get_if<parts::Fault>(&opened)) FAIL(fault->text());
    return std::get<Document>(std::move(opened));
  }
  /// As another program would: the time moves on, whatever the clock's step.
  void write(const std::string& text) const {
    const auto time = fs::last_write_time(file());
    std::ofstream(file(), std::ios::binary) << text;
    fs::last_write_time(file(), time + std::chrono::seconds(2));
  }

  fs::path folder;
  std::string before;
};

Edit tray(const std::string& value) {
  return {Edit::What::set, {"part", "tray", "under", "by", "length"}, '"' + value + '"'};
}

void drag(Document& document, const std::string& value) {
  const std::array edits = {tray(value)};
  const auto fault = document.drag("tray to " + value, edits);
  if (fault) FAIL(fault->text());
}

fit::Verdict verdict(const build::Build& build, const std::string& drive) {
  fit::Options options;
  options.drive = drive;
  return fit::check(build, options).seatings[0].verdict;
}

}  // namespace

TEST_CASE("a drag is one step, and undone not a byte is different") {
  const Desk desk;
  Document document = desk.open();
  CHECK(document.undoes() == nullptr);
  CHECK_FALSE(document.unsaved());
  for (const char* value : {"9.2 ±0.2", "9.4 ±0.2", "9.5 ±0.2"}) drag(document, value);
  CHECK(document.dragging());
  document.commit();
  REQUIRE(document.undoes() != nullptr);
  CHECK(*document.undoes() == "tray to 9.5 ±0.2");
  CHECK(document.unsaved());
  const std::string after = document.text();
  document.undo();
  CHECK(document.text() == desk.before);
  CHECK(document.undoes() == nullptr);
  CHECK_FALSE(document.unsaved());
  document.redo();
  CHECK(document.text() == after);
  CHECK(document.build()->parts[1].position.by.dimension.nominal == 9.5);
  // a drag that comes back, one that is taken back, an edit that changes nothing: no steps
  drag(document, "9.9 ±0.2");
  drag(document, "9.5 ±0.2");
  document.commit();
  drag(document, "9.9 ±0.2");
  document.cancel();
  const std::array same = {tray("9.5 ±0.2")};
  CHECK_FALSE(document.edit("nothing", same));
  document.undo();
  CHECK(document.text() == desk.before);
  // what is done anew ends what could be redone
  REQUIRE(document.redoes() != nullptr);
  const std::array other = {tray("8 ±0.2")};
  CHECK_FALSE(document.edit("other", other));
  CHECK(document.redoes() == nullptr);
}

TEST_CASE("what is no build is refused, and the last good value stays") {
  const Desk desk;
  Document document = desk.open();
  drag(document, "9.3 ±0.2");
  const auto version = document.version();
  const std::string good = document.text();
  const std::array bad = {tray("-1")};
  CHECK(document.drag("bad", bad));
  CHECK(document.edit("bad", bad));
  CHECK(document.text() == good);
  CHECK(document.version() == version);
  CHECK(document.build()->parts[1].position.by.dimension.nominal == 9.3);
  CHECK(*document.undoes() == "tray to 9.3 ±0.2");
}

TEST_CASE("what is saved reads as what was shown, comments and all") {
  const Desk desk;
  Document document = desk.open();
  fs::permissions(desk.file(), fs::perms::owner_read | fs::perms::owner_write);
  REQUIRE(verdict(*document.build(), "card with low fins") == fit::Verdict::marginal);
  drag(document, "9.6 ±0.2");
  REQUIRE(verdict(*document.build(), "card with low fins") == fit::Verdict::fits);
  CHECK_FALSE(document.save());
  CHECK_FALSE(document.unsaved());
  std::string wanted = desk.before;
  wanted.replace(wanted.find("9.1 ±0.2"), 4 + std::string("±0.2").size(), "9.6 ±0.2");
  CHECK(content(desk.file()) == wanted);
  CHECK(fs::status(desk.file()).permissions() == (fs::perms::owner_read | fs::perms::owner_write));
  const auto read = build::read(desk.file());
  CHECK(verdict(std::get<build::Build>(read), "card with low fins") == fit::Verdict::fits);
  document.undo();
  CHECK(document.unsaved());
  // a link stays a link
  const fs::path link = desk.folder / "link.build.toml";
  fs::create_symlink("desk.build.toml", link);
  CHECK_FALSE(document.save_as(link));
  CHECK(fs::is_symlink(link));
  CHECK(content(desk.file()) == desk.before);
  // nowhere to write
  const auto fault = document.save_as(desk.folder / "no such folder" / "x.build.toml");
  REQUIRE(fault);
  CHECK(fault->find("no such folder") != std::string::npos);
  CHECK(document.path() == link);
}

TEST_CASE("a file that changes outside is read again, unless something here is unsaved") {
  const Desk desk;
  Document document = desk.open();
  CHECK(document.look() == Outside::same);
  desk.write(desk.before);  // the same again
  CHECK(document.look() == Outside::same);
  desk.write(desk.before + "# theirs\n");
  CHECK(document.look() == Outside::reloaded);
  CHECK(document.text() == desk.before + "# theirs\n");
  CHECK_FALSE(document.unsaved());
  document.undo();
  CHECK(document.text() == desk.before);
  CHECK(document.unsaved());  // the file says something else
  document.redo();
  drag(document, "9.6 ±0.2");
  document.commit();
  const std::string mine = document.text();
  desk.write(desk.before + "# theirs again\n");
  CHECK(document.look() == Outside::conflict);
  CHECK(document.text() == mine);
  REQUIRE(document.save());  // refuses
  CHECK(content(desk.file()) == desk.before + "# theirs again\n");
  SUBCASE("theirs") {
    CHECK_FALSE(document.reload());
    CHECK(document.text() == desk.before + "# theirs again\n");
    document.undo();
    CHECK(document.text() == mine);
  }
  SUBCASE("mine") {
    CHECK_FALSE(document.save_over());
    CHECK(content(desk.file()) == mine);
    CHECK(document.look() == Outside::same);
  }
  SUBCASE("theirs is no build") {
    desk.write("title = ");
    CHECK_FALSE(document.reload());
    REQUIRE(document.fault());
    CHECK(document.fault()->line == 1);
    CHECK(document.build()->title == "Thin desktop: a card with a heatsink under the tray");  // the last good one
    document.undo();
    CHECK_FALSE(document.fault());
  }
  SUBCASE("gone") {
    fs::remove(desk.file());
    CHECK(document.look() == Outside::gone);
    CHECK(document.reload());
    CHECK_FALSE(document.save());  // is there again
    CHECK(content(desk.file()) == mine);
  }
}

TEST_CASE("what a crash leaves is offered at the next start") {
  const Desk desk;
  std::string mine;
  {
    Document document = desk.open();
    CHECK_FALSE(document.recovery());
    CHECK_FALSE(document.keep_recovery());
    CHECK_FALSE(fs::exists(document.recovery_file()));  // nothing is unsaved
    drag(document, "9.6 ±0.2");
    document.commit();
    CHECK_FALSE(document.keep_recovery());
    CHECK(content(document.recovery_file()) == document.text());
    mine = document.text();
  }  // as if it had crashed
  Document document = desk.open();
  REQUIRE(document.recovery());
  CHECK(document.recovery()->text == mine);
  CHECK_FALSE(document.recovery()->older);
  CHECK(document.text() == desk.before);
  SUBCASE("taken") {
    document.recover();
    CHECK(document.text() == mine);
    CHECK(document.unsaved());
    CHECK_FALSE(document.save());
    CHECK_FALSE(fs::exists(document.recovery_file()));
    document.undo();
    CHECK(document.text() == desk.before);
  }
  SUBCASE("not taken") {
    document.forget_recovery();
    CHECK_FALSE(fs::exists(document.recovery_file()));
    CHECK(document.text() == desk.before);
  }
  SUBCASE("taken back again") {
    document.recover();
    document.undo();
    CHECK_FALSE(document.keep_recovery());
    CHECK_FALSE(fs::exists(document.recovery_file()));
  }
  SUBCASE("thrown away with the rest") {
    document.recover();
    document.discard();
    CHECK_FALSE(fs::exists(document.recovery_file()));
    CHECK(content(desk.file()) == desk.before);
  }
}

TEST_CASE("a file that is not there or is no build does not open") {
  const Desk desk;
  CHECK(std::holds_alternative<parts::Fault>(Document::open(desk.folder / "none.build.toml")));
  CHECK(std::holds_alternative<parts::Fault>(Document::open(desk.folder)));
  desk.write("title = 3");
  CHECK(std::holds_alternative<parts::Fault>(Document::open(desk.file())));
}

TEST_CASE("another text is one step, and none where it is no build") {
  const Desk desk;
  Document document = desk.open();
  const std::string other =
      document.text() + "\n[[drive]]\nname = \"one more\"\nuse = \"m2/2280-S3-M\"\nbus = \"pcie 4.0 x4\"\n";
  CHECK_FALSE(document.replace("one more drive", other).has_value());
  CHECK(document.build()->drives.size() == 4);
  const auto version = document.version();
  const auto fault = document.replace("nonsense", "title = 5\n");
  REQUIRE(fault);
  CHECK(fault->line == 1);
  CHECK(document.text() == other);
  CHECK(document.version() == version);
  CHECK_FALSE(document.replace("the same again", other).has_value());
  document.undo();  // that was no step
  CHECK(document.text() == desk.before);
  CHECK(document.undoes() == nullptr);
}
