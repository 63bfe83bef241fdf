#include "viewer/session.h"

#include "support/check_mm.h"

#include <algorithm>
#include <doctest/doctest.h>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>
#include <unistd.h>

using namespace baywright;
using namespace baywright::viewer;

namespace {

/// A copy of a demo build in a folder of its own, with what it uses beside it.
class Copy {
 public:
  explicit Copy(const std::string& name) {
    static int count = 0;
    folder_ = std::filesystem::temp_directory_path() /
              ("baywright-session-" + std::to_string(::getpid()) + '-' + std::to_string(count++));
    std::filesystem::create_directories(folder_);
    file_ = folder_ / name;
    std::filesystem::copy_file(std::filesystem::path(BAYWRIGHT_SOURCE) / "models" / "builds" / name, file_);
  }
  ~Copy() {
    std::error_code error;
    std::filesystem::remove_all(folder_, error);
  }
  Copy(const Copy&) = delete;
  Copy& operator=(const Copy&) = delete;

  [[nodiscard]] const std::filesystem::path& file() const { return file_; }
  [[nodiscard]] std::string text() const {
    std::ifstream in(file_);
    return {std::istreambuf_iterator<char>(in), std::istreambuf_iterator<char>()};
  }
  void write(const std::string& text) const { std::ofstream(file_) << text; }

 private:
  std::filesystem::path folder_;
  std::filesystem::path file_;
};

const Handle& handle_called(const Session& session, const std::string& label) {
  const auto found = std::find_if(session.handles().begin(), session.handles().end(),
                                  [&](const Handle& handle) { return handle.label == label; });
  REQUIRE(found != session.handles().end());
  return *found;
}

}  // namespace

TEST_CASE("a build opens with the seating that most needs looking at, and its answer in the title") {
  const Copy copy("thin-desktop.build.toml");
  Session session({}, {});
  session.open(copy.file());
  REQUIRE(session.shown() != nullptr);
  CHECK(session.shown()->choice == Choice{"card with tall fins", "rear slot"});
  CHECK(session.title().starts_with("does not fit: "));
  CHECK(session.title().ends_with("thin-desktop.build.toml"));
  CHECK(session.answer().starts_with("card with tall fins in rear slot"));
  REQUIRE(session.settings.recent.size() == 1);
  CHECK(session.settings.recent.front() == copy.file().string());
}

TEST_CASE("a tray that is dragged off turns the verdict, undo takes all of it back, and save writes what is shown") {
  const Copy copy("thin-desktop.build.toml");
  const std::string before = copy.text();
  Session session({}, {});
  session.open(copy.file());
  // What `explain` says of this build: for a sure fit the tray must be at least 10.48 mm off.
  for (const double off : {9.4, 9.9, 10.6}) session.drag(handle_called(session, "tray under board"), off);
  session.commit();
  CHECK(session.shown()->seating.verdict == fit::Verdict::fits);
  test::check_mm(handle_called(session, "tray under board").nominal, 10.6, 1e-9);
  CHECK(session.standing().unsaved);
  session.act(Action::undo);
  CHECK(session.shown()->seating.verdict == fit::Verdict::does_not_fit);
  CHECK(!session.standing().to_undo);  // three moves of the hand were one step
  session.act(Action::redo);
  session.act(Action::save);
  CHECK(!session.standing().unsaved);
  const std::string after = copy.text();
  CHECK(after.find("10.6 ±0.2") != std::string::npos);
  CHECK(after.size() == before.size() + 1);  // "9.1" is "10.6" now, and nothing else changed
}

TEST_CASE("Escape while the hand holds a band takes the drag back") {
  const Copy copy("thin-desktop.build.toml");
  Session session({}, {});
  session.open(copy.file());
  session.drag(handle_called(session, "tray under board"), 12.0);
  session.act(Action::leave);
  CHECK(session.shown()->seating.verdict == fit::Verdict::does_not_fit);
  CHECK(!session.standing().unsaved);
}

TEST_CASE("a length is typed as people write it, with limits or without, and nonsense says what would be right") {
  const Copy copy("thin-desktop.build.toml");
  Session session({}, {});
  session.open(copy.file());
  CHECK(!session.type(handle_called(session, "tray under board"), "10.6"));
  test::check_mm(handle_called(session, "tray under board").plus, 0.2, 1e-9);  // limits stay
  CHECK(!session.type(handle_called(session, "tray under board"), "11 ±0.05"));
  test::check_mm(handle_called(session, "tray under board").nominal, 11.0, 1e-9);
  test::check_mm(handle_called(session, "tray under board").plus, 0.05, 1e-9);
  for (const char* wrong : {"", "thick", "11,5", "nan", "-4", "1e9"}) {
    CAPTURE(wrong);
    const auto fault = session.type(handle_called(session, "tray under board"), wrong);
    REQUIRE(fault.has_value());
    CHECK(!fault->empty());
  }
  test::check_mm(handle_called(session, "tray under board").nominal, 11.0, 1e-9);
}

TEST_CASE("nudges that follow soon are one step, which ends by itself") {
  const Copy copy("thin-desktop.build.toml");
  Session session({}, {});
  session.open(copy.file());
  (void)session.tick(10.0);
  for (int i = 0; i < 3; ++i) session.nudge(handle_called(session, "tray under board"), 0.1);
  test::check_mm(handle_called(session, "tray under board").nominal, 9.4, 1e-9);
  CHECK(session.document()->dragging());
  (void)session.tick(12.0);
  CHECK(!session.document()->dragging());
  session.act(Action::undo);
  test::check_mm(handle_called(session, "tray under board").nominal, 9.1, 1e-9);
}

TEST_CASE("nothing is lost without a question, and the question has three answers") {
  const Copy copy("thin-desktop.build.toml");
  const Copy other("laptop.build.toml");
  const std::string before = copy.text();
  Session session({}, {});
  session.open(copy.file());
  CHECK(session.may_close());
  session.drag(handle_called(session, "tray under board"), 10.6);
  session.commit();

  session.act(Action::quit);
  CHECK(session.page == Page::unsaved);
  CHECK(!session.closing());
  session.act(Action::leave);  // Escape is Cancel
  CHECK(session.page == Page::none);
  CHECK(session.standing().unsaved);

  session.open(other.file());
  CHECK(session.page == Page::unsaved);
  CHECK(session.document()->path() == copy.file());
  session.answer_unsaved(Session::Leave::discard);
  CHECK(session.document()->path() == other.file());
  CHECK(copy.text() == before);
}

TEST_CASE("a file that cannot be opened leaves what is open, and a model says how it is used") {
  const Copy copy("thin-desktop.build.toml");
  Session session({}, {});
  session.open(copy.file());
  session.open(copy.file().parent_path() / "no such.build.toml");
  CHECK(session.notice_is_fault());
  CHECK(session.document()->path() == copy.file());
  session.open("cooler.stl");
  CHECK(!session.notice_is_fault());
  CHECK(session.notice().find("cooler.stl") != std::string::npos);
  CHECK(session.notice().find("solid") != std::string::npos);
}

TEST_CASE("a file that changed on disk is read again and the view stays") {
  const Copy copy("thin-desktop.build.toml");
  Session session({}, {});
  session.open(copy.file());
  (void)session.tick(1.0);
  session.act(Action::top);
  session.fly_to.reset();
  session.looking.chosen = session.shown()->model.things.front().element;
  std::string text = copy.text();
  text.replace(text.find("9.1 ±0.2"), std::string("9.1 ±0.2").size(), "11.25 ±0.2");
  copy.write(text);
  CHECK(session.tick(5.0));
  CHECK(session.shown()->seating.verdict == fit::Verdict::fits);
  CHECK(session.looking.side == render::Side::top);
  CHECK(!session.fly_to);
  CHECK(session.looking.chosen.has_value());
  CHECK(!session.notice().empty());
}

TEST_CASE("isolating a part is left again with what was hidden before") {
  const Copy copy("thin-desktop.build.toml");
  Session session({}, {});
  session.open(copy.file());
  const render::Model& model = session.shown()->model;
  REQUIRE(model.things.size() > 1);
  session.looking.chosen = model.things.back().element;
  session.act(Action::hide);
  CHECK(session.looking.not_shown(model) == std::set<std::string>{model.things.back().part});
  session.looking.chosen = model.things.front().element;
  session.act(Action::isolate);
  CHECK(!session.looking.not_shown(model).contains(model.things.front().part));
  CHECK(session.looking.not_shown(model).contains(model.things.back().part));
  session.act(Action::leave);
  CHECK(session.looking.not_shown(model) == std::set<std::string>{model.things.back().part});
  session.act(Action::show_all);
  CHECK(session.looking.not_shown(model).empty());
}
