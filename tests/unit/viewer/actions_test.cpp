#include "viewer/actions.h"

#include <doctest/doctest.h>
#include <set>
#include <string>

using namespace baywright::viewer;

TEST_CASE("no key stands twice, and every action has a key, a name and a sentence") {
  std::set<std::string> keys;
  std::set<Action> seen;
  for (const ActionRow& each : actions()) {
    CAPTURE(each.name);
    CHECK(seen.insert(each.action).second);
    CHECK(!each.name.empty());
    CHECK(each.does.ends_with('.'));
    REQUIRE(!each.chords.empty());
    for (const Chord& chord : each.chords) {
      CHECK(keys.insert(text(chord)).second);
      CHECK(action_of(chord) == each.action);
    }
  }
  CHECK(seen.size() == static_cast<std::size_t>(Action::quit) + 1);  // the last of the list: none is forgotten
}

TEST_CASE("actions of one group stand together, so that help has each heading once") {
  std::set<std::string_view> done;
  std::string_view group;
  for (const ActionRow& each : actions()) {
    if (each.group == group) continue;
    group = each.group;
    CHECK(done.insert(group).second);
  }
}

TEST_CASE("with nothing open only what needs nothing can be done") {
  const Standing nothing;
  CHECK(enabled(Action::open, nothing));
  CHECK(enabled(Action::help, nothing));
  CHECK(enabled(Action::quit, nothing));
  for (const Action action :
       {Action::save, Action::undo, Action::copy_answer, Action::whole, Action::hide, Action::grid, Action::findings,
        Action::try_plan, Action::apply_plan, Action::put_in, Action::customer})
    CHECK(!enabled(action, nothing));
}

TEST_CASE("an action follows the one thing that it needs") {
  Standing standing;
  standing.file = true;
  CHECK(!enabled(Action::save, standing));
  standing.unsaved = true;
  CHECK(enabled(Action::save, standing));
  CHECK(!enabled(Action::hide, standing));
  standing.part = true;
  CHECK(enabled(Action::hide, standing));
  CHECK(!enabled(Action::apply_plan, standing));
  standing.plan = true;
  CHECK(!enabled(Action::apply_plan, standing));  // only what is shown is applied
  standing.tried = true;
  CHECK(enabled(Action::apply_plan, standing));
}

TEST_CASE("a key says itself as people write it") {
  CHECK(text({"z", true, true}) == "Ctrl+Shift+Z");
  CHECK(text({"+", true}) == "Ctrl++");
  CHECK(text({"F11"}) == "F11");
  CHECK(text({"h"}) == "H");
}
