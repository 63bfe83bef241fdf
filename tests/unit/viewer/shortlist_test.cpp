// A shortlist beside the build: the demo's figures, worked out by hand from its own columns.
#include "output/rank_text.h"
#include "viewer/session.h"

#include <algorithm>
#include <chrono>
#include <doctest/doctest.h>
#include <filesystem>
#include <fstream>
#include <string>
#include <thread>
#include <unistd.h>

using namespace baywright;
using namespace baywright::viewer;
namespace fs = std::filesystem;

namespace {

const fs::path models = fs::path(BAYWRIGHT_SOURCE) / "models";
const fs::path list = models / "shelf" / "old-laptop.csv";

/// The demo machine in a folder of its own.
class Folder {
 public:
  Folder() {
    static int count = 0;
    at = fs::temp_directory_path() /
         ("baywright-shortlist-" + std::to_string(::getpid()) + '-' + std::to_string(count++));
    fs::create_directories(at);
    build = at / "old-laptop.build.toml";
    fs::copy_file(models / "builds" / "old-laptop.build.toml", build);
  }
  ~Folder() {
    std::error_code error;
    fs::remove_all(at, error);
  }
  Folder(const Folder&) = delete;
  Folder& operator=(const Folder&) = delete;
  fs::path at;
  fs::path build;
};

/// Until every drive was tried.
const plans::Buying& bought(Session& session) {
  for (int i = 0; i < 1200 && (session.buying_waits() || session.waiting()); ++i) {
    std::this_thread::sleep_for(std::chrono::milliseconds(50));
    session.tick(0.05 * i);
  }
  REQUIRE(session.buying() != nullptr);
  REQUIRE(!session.buying_waits());
  return *session.buying();
}

std::size_t named(const plans::Buying& buying, const std::string& name) {
  for (std::size_t i = 0; i < buying.offers.size(); ++i)
    if (buying.offers[i].name == name) return i;
  FAIL(name);
  return 0;
}

std::string taken(const plans::Buying& buying) {
  return buying.choice.taken ? buying.offers[*buying.choice.taken].name : "none";
}

}  // namespace

TEST_CASE("a shortlist opens beside the build, and another order takes another drive") {
  const Folder folder;
  Session session({}, {});
  session.open(folder.build);
  session.open(list);
  CHECK(session.page == Page::shortlist);
  CHECK(session.standing().shortlist);
  CHECK(session.standing().file);
  // 109.00 for 2000 GB is 0.0545 a GB, 62.90 for 1000 is 0.0629, 94.50 is 0.0945: of those that the SATA slot carries.
  CHECK(taken(bought(session)) == "Plain SATA card 2 TB");
  CHECK(output::rank_answer(*session.buying()).front().starts_with("Take Plain SATA card 2 TB: it fits M.2 slot"));
  session.sort_by(value::Column::price);
  CHECK(taken(*session.buying()) == "Plain SATA card 1 TB");
  session.sort_by(value::Column::warranty);  // five years against three
  CHECK(taken(*session.buying()) == "Sturdy SATA card 1 TB");
  session.sort_by(value::Column::name);
  CHECK(session.buying()->offers[session.buying()->order.front()].name == "Cache module 32 GB");
  CHECK(taken(*session.buying()) == "Sturdy SATA card 1 TB");  // a name is no ground for taking it
  session.act(Action::copy_answer);
  CHECK(session.take_copy() == output::rank_text(*session.buying()));
  session.act(Action::leave);
  CHECK(session.page == Page::none);
  session.act(Action::shortlist);
  CHECK(session.page == Page::shortlist);
}

TEST_CASE("a drive of the shortlist is seated as one step that can be undone") {
  const Folder folder;
  Session session({}, {});
  session.open(folder.build);
  const std::string before = session.document()->text();
  session.open(list);
  const std::size_t sturdy = named(bought(session), "Sturdy SATA card 1 TB");
  session.seat_offer(sturdy);
  CHECK(session.page == Page::none);
  CHECK(session.shown()->choice == Choice{"Sturdy SATA card 1 TB", "M.2 slot"});
  CHECK(session.shown()->seating.verdict == fit::Verdict::fits);
  REQUIRE(session.document()->undoes() != nullptr);
  CHECK(*session.document()->undoes() == "drive of the shortlist added");
  session.seat_offer(sturdy);  // again: it is there already, once
  const auto& drives = session.document()->build()->drives;
  CHECK(std::count_if(drives.begin(), drives.end(),
                      [](const build::Drive& drive) { return drive.name == "Sturdy SATA card 1 TB"; }) == 1);
  while (session.standing().to_undo) session.act(Action::undo);
  CHECK(session.document()->text() == before);
  CHECK(session.shown()->choice.drive == "card that was bought");
}

TEST_CASE("without a machine a shortlist is compared all the same, and then waits for one") {
  const Folder folder;
  Session session({}, {});
  session.open(list);
  CHECK(session.page == Page::shortlist);
  const plans::Buying& buying = bought(session);
  CHECK(buying.order.size() == 5);
  session.act(Action::copy_answer);
  CHECK(session.take_copy() == output::rank_text(buying));
  CHECK(std::none_of(buying.tried.begin(), buying.tried.end(), [](const auto& tried) { return tried.has_value(); }));
  session.seat_offer(0);
  CHECK(session.page == Page::open);
  session.open(folder.build);
  CHECK(session.page == Page::shortlist);
  CHECK(bought(session).tried[0].has_value());
}

TEST_CASE("a .toml file is a build where it is one, else a shortlist, and a bad list says where") {
  const Folder folder;
  Session session({}, {});
  const fs::path other = folder.at / "machine.toml";
  fs::copy_file(folder.build, other);
  session.open(other);
  REQUIRE(session.document());
  CHECK(session.page == Page::none);
  std::ofstream(folder.at / "drives.toml") << "[[drive]]\nname = \"one\"\nuse = \"m2/2280-S3-B+M\"\nbus = \"sata 6\"\n";
  session.open(folder.at / "drives.toml");
  CHECK(session.page == Page::shortlist);
  REQUIRE(session.shortlist() != nullptr);
  CHECK(session.shortlist()->list.offers.size() == 1);
  std::ofstream(folder.at / "bad.csv") << "name,price\none,dear\n";
  session.open(folder.at / "bad.csv");
  CHECK(session.notice_is_fault());
  CHECK(session.notice().find("bad.csv:2:") != std::string::npos);
  CHECK(session.shortlist()->file == folder.at / "drives.toml");  // what was open stays
}
