#include "fit/connect.h"

#include "standards/m2.h"

#include <algorithm>

namespace baywright::fit {

namespace links = standards::links;
namespace m2 = standards::m2;
using build::CardSlot;
using build::Drive;
using build::Form;
using build::M2Socket;
using build::Slot;

namespace {

Form form_of(const Slot& slot) {
  return std::holds_alternative<M2Socket>(slot.socket) ? Form::m2 : Form::add_in_card;
}

std::string width_of(int size) {
  return std::to_string(size > 9999 ? size / 1000 : size / 100);
}
int length_code(int size) {
  return size > 9999 ? size % 1000 : size % 100;
}

std::string list_of(std::vector<int> sizes) {
  std::sort(sizes.begin(), sizes.end());
  std::string out;
  for (std::size_t i = 0; i < sizes.size(); ++i) {
    if (i > 0) out += i + 1 == sizes.size() ? " and " : ", ";
    out += std::to_string(sizes[i]);
  }
  return out;
}

Question card_size(const Drive& drive, const Slot& slot) {
  const int size = build::size_of(drive.card);
  const std::string offered = list_of(slot.sizes);
  const auto with = [&](Answer answer, Code code) {
    return Question{answer, {code, {{"size", std::to_string(size)}, {"offered", offered}}, {}}};
  };
  if (std::find(slot.sizes.begin(), slot.sizes.end(), size) != slot.sizes.end())
    return with(Answer::yes, Code::size_offered);
  const std::string width = std::to_string(drive.card.width);
  int longest = 0;
  for (const int each : slot.sizes)
    if (width_of(each) == width) longest = std::max(longest, length_code(each));
  if (longest == 0) return with(Answer::no, Code::width_not_held);
  // A card shorter than an offered place can be carried out to it by a length extender; a longer one cannot be cut.
  if (drive.card.length < longest) return with(Answer::with_adapter, Code::size_too_short);
  return with(Answer::no, Code::size_too_long);
}

Question form_question(const Drive& drive, const Slot& slot) {
  if (drive.form == Form::soldered) return {Answer::no, {Code::soldered, {}, {}}};
  const Form place = form_of(slot);
  if (drive.form != place)
    return {Answer::no, {Code::other_form, {{"drive", form_name(drive.form)}, {"place", form_name(place)}}, {}}};
  if (place == Form::m2) return card_size(drive, slot);
  return {Answer::yes, {Code::same_form, {{"form", form_name(place)}}, {}}};
}

Question interface_question(const Drive& drive, const Slot& slot) {
  if (drive.form != form_of(slot))
    return {Answer::no,
            {Code::connector_differs, {{"drive", form_name(drive.form)}, {"place", form_name(form_of(slot))}}, {}}};
  if (const auto* socket = std::get_if<M2Socket>(&slot.socket)) {
    const bool meets = m2::mates(socket->key, drive.card.keys);
    std::string keys;
    for (const char key : drive.card.keys) keys += (keys.empty() ? "" : "+") + std::string(1, key);
    return {meets ? Answer::yes : Answer::no,
            {meets ? Code::key_meets : Code::key_meets_not,
             {{"key", std::string(1, socket->key)}, {"card keys", keys}},
             {}}};
  }
  const auto& body = std::get<CardSlot>(slot.socket);
  const bool short_body = drive.card_lanes > body.lanes;
  const Code code = !short_body ? Code::slot_takes_card : body.open_ended ? Code::slot_open : Code::slot_too_short;
  return {code == Code::slot_too_short ? Answer::no : Answer::yes,
          {code, {{"card", "x" + std::to_string(drive.card_lanes)}, {"body", "x" + std::to_string(body.lanes)}}, {}}};
}

std::string wired(const Slot& slot) {
  std::string out;
  for (const links::Link& link : slot.bus) out += (out.empty() ? "" : " and ") + links::in_words(link);
  return out;
}

/// What the standard lets pass between this card and this socket, at most.
links::Link limited(const Drive& drive, const Slot& slot) {
  links::Link link = drive.bus;
  const auto* socket = std::get_if<M2Socket>(&slot.socket);
  if (socket != nullptr && drive.form == Form::m2 && link.protocol == links::Protocol::pcie) {
    const m2::Carries most = m2::may_carry(socket->key, drive.card.keys);
    if (most.pcie_lanes > 0) link.lanes = std::min(link.lanes, most.pcie_lanes);
  }
  return link;
}

Question bus_question(const Drive& drive, const Slot& slot, std::optional<links::Link>& settled) {
  for (const links::Link& host : slot.bus) {
    const auto link = links::settle(limited(drive, slot), host);
    if (link && (!settled || links::megabytes(*link) > links::megabytes(*settled))) settled = link;
  }
  const std::string speaks = links::in_words(drive.bus);
  if (!settled) return {Answer::no, {Code::bus_absent, {{"drive", speaks}, {"wired", wired(slot)}}, {}}};
  const double own = links::megabytes(drive.bus);
  const double got = links::megabytes(*settled);
  if (got >= own) return {Answer::yes, {Code::bus_full, {{"link", links::in_words(*settled)}}, {{"link rate", got}}}};
  return {Answer::yes,
          {Code::bus_slower,
           {{"drive", speaks}, {"link", links::in_words(*settled)}},
           {{"share", got / own}, {"drive rate", own}, {"link rate", got}}}};
}

}  // namespace

std::string form_name(Form form) {
  switch (form) {
    case Form::m2:
      return "M.2 card";
    case Form::drive_2_5:
      return "2.5-inch drive";
    case Form::drive_3_5:
      return "3.5-inch drive";
    case Form::add_in_card:
      return "add-in card";
    case Form::msata:
      return "mSATA card";
    case Form::soldered:
      return "soldered chip";
  }
  return {};
}

Connection connect(const Drive& drive, const Slot& slot) {
  Connection out;
  out.questions.form_factor = form_question(drive, slot);
  out.questions.interface = interface_question(drive, slot);
  const bool sata_drive = drive.form == Form::drive_2_5 || drive.form == Form::drive_3_5;
  if (sata_drive || drive.form == Form::soldered) {
    // Its connector is its bus: one answer to both.
    out.questions.bus = {out.questions.interface.answer,
                         {Code::bus_with_interface, {{"drive", form_name(drive.form)}}, {}}};
    return out;
  }
  out.questions.bus = bus_question(drive, slot, out.link);
  return out;
}

}  // namespace baywright::fit
