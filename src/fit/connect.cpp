#include "fit/connect.h"

#include "standards/m2.h"
#include "standards/mini_cards.h"

#include <algorithm>

namespace baywright::fit {

namespace connectors = standards::connectors;
namespace links = standards::links;
namespace m2 = standards::m2;
using build::Bay;
using build::CardSlot;
using build::Drive;
using build::form_of;
using build::M2Socket;
using build::MiniSocket;
using build::Place;
using parts::Form;
using parts::form_name;
using parts::of_edsff;

namespace {

std::string list_of(std::vector<int> sizes) {
  std::sort(sizes.begin(), sizes.end());
  std::string out;
  for (std::size_t i = 0; i < sizes.size(); ++i) {
    if (i > 0) out += i + 1 == sizes.size() ? " and " : ", ";
    out += std::to_string(sizes[i]);
  }
  return out;
}

/// The size that the place sees: an extender makes a card longer.
int size_at_place(const Drive& drive) {
  if (!drive.worn || drive.worn->adapter->length == 0) return build::size_of(drive.card);
  return build::size_of({22, drive.worn->adapter->length, "", ""});
}

Question card_size(const Drive& drive, const Place& place) {
  const int size = size_at_place(drive);
  const std::string offered = list_of(place.sizes);
  const auto with = [&](Answer answer, Code code) {
    return Question{answer, {code, {{"size", std::to_string(size)}, {"offered", offered}}, {}}};
  };
  if (std::find(place.sizes.begin(), place.sizes.end(), size) != place.sizes.end())
    return with(Answer::yes, Code::size_offered);
  int longest = 0;
  for (const int each : place.sizes)
    if (build::width_code(each) == build::width_code(size)) longest = std::max(longest, build::length_code(each));
  if (longest == 0) return with(Answer::no, Code::width_not_held);
  // A card shorter than an offered place can be carried out to it by a length extender; a longer one cannot be cut.
  if (build::length_code(size) < longest) return with(Answer::with_adapter, Code::size_too_short);
  return with(Answer::no, Code::size_too_long);
}

Question mini_size(const Drive& drive, const MiniSocket& socket) {
  if (drive.half ? socket.half : socket.full)
    return {Answer::yes, {Code::same_form, {{"form", form_name(Form::mini_card)}}, {}}};
  if (drive.half) {
    namespace rows = standards::mini_cards;
    const double farther = rows::full_hole().nominal - rows::half_hole().nominal;
    return {Answer::with_adapter, {Code::half_card, {}, {{"farther", farther}}}};
  }
  return {Answer::no, {Code::full_card, {}, {}}};
}

/// Whether the adapter would carry the drive's protocol and plug at all.
bool passes(const parts::Adapter& adapter, const Drive& drive) {
  if (adapter.carries && *adapter.carries != drive.bus.protocol) return false;
  const bool cable = adapter.takes == Form::drive_2_5 && adapter.becomes == Form::m2;
  return !cable || drive.plug == connectors::Plug::u2 || drive.plug == connectors::Plug::u3;
}

/// The adapter of the library that would carry the drive to the place; null: none.
const parts::Adapter* adapter_for(const Drive& drive, const Place& place) {
  if (drive.worn) return nullptr;
  const Form form = form_of(place);
  const auto* bay = std::get_if<Bay>(&place.socket);
  for (const parts::Adapter& each : parts::adapters()) {
    if (each.takes != drive.form || each.becomes != form || each.takes == each.becomes || !passes(each, drive))
      continue;
    if (bay != nullptr && bay->backplane && each.becomes == Form::drive_3_5 && !each.flush)
      continue;  // beside its receptacle
    if (const auto* slot = std::get_if<CardSlot>(&place.socket); slot != nullptr && each.lanes > slot->lanes) continue;
    return &each;
  }
  return nullptr;
}

Question form_question(const Drive& drive, const Place& place) {
  if (drive.form == Form::soldered) return {Answer::no, {Code::soldered, {}, {}}};
  const Form form = form_of(place);
  const std::vector<std::pair<std::string, std::string>> forms = {{"drive", form_name(drive.outer())},
                                                                  {"place", form_name(form)}};
  if (drive.outer() != form) {
    const parts::Adapter* adapter = adapter_for(drive, place);
    if (adapter == nullptr) {
      Reason other{Code::other_form, forms, {}};
      if (drive.outer() != drive.form) other.words.emplace_back("worn", drive.worn->name);
      return {Answer::no, std::move(other)};
    }
    Reason why{Code::adapter_needed, forms, {}};
    why.words.emplace_back("adapter", std::string(adapter->id));
    return {Answer::with_adapter, std::move(why)};
  }
  if (form == Form::m2) return card_size(drive, place);
  if (const auto* socket = std::get_if<MiniSocket>(&place.socket)) return mini_size(drive, *socket);
  return {Answer::yes, {Code::same_form, {{"form", form_name(form)}}, {}}};
}

Question key_question(char key, const std::string& card_keys) {
  const bool meets = m2::mates(key, card_keys);
  std::string keys;
  for (const char each : card_keys) keys += (keys.empty() ? "" : "+") + std::string(1, each);
  return {meets ? Answer::yes : Answer::no,
          {meets ? Code::key_meets : Code::key_meets_not, {{"key", std::string(1, key)}, {"card keys", keys}}, {}}};
}

Question slot_question(const Drive& drive, const CardSlot& body) {
  const bool short_body = drive.card_lanes > body.lanes;
  const Code code = !short_body ? Code::slot_takes_card : body.open_ended ? Code::slot_open : Code::slot_too_short;
  return {code == Code::slot_too_short ? Answer::no : Answer::yes,
          {code, {{"card", "x" + std::to_string(drive.card_lanes)}, {"body", "x" + std::to_string(body.lanes)}}, {}}};
}

/// The plug that stands at the bay: in a shell, SATA.
connectors::Plug plug_of(const Drive& drive) {
  return parts::cased(drive.form) ? drive.plug : connectors::Plug::sata;
}

Reason plug_reason(const Drive& drive, const Bay& bay, Code code) {
  const connectors::Plug plug = plug_of(drive);
  return {code,
          {{"plug", std::string(connectors::in_words(plug))},
           {"receptacle", std::string(connectors::receptacle_in_words(bay.receptacle))},
           {"why", std::string(connectors::mate(plug, bay.receptacle).why)}},
          {}};
}

/// The M.2 card in its own adapter: a shell has key B, a carrier key M.
std::optional<Question> key_in_adapter(const Drive& drive) {
  if (!drive.worn || drive.form != Form::m2 || drive.outer() == Form::m2) return std::nullopt;
  Question question = key_question(drive.outer() == Form::add_in_card ? 'M' : 'B', drive.card.keys);
  if (question.answer == Answer::yes) return std::nullopt;
  return question;
}

Question interface_question(const Drive& drive, const Place& place) {
  const Form form = form_of(place);
  if (drive.outer() != form) {
    const parts::Adapter* adapter = adapter_for(drive, place);
    const bool turned = adapter != nullptr && adapter->turns == parts::Turns::form_factor_and_interface;
    const auto* bay = std::get_if<Bay>(&place.socket);
    // Between bays an adapter changes the size only: the plugs must meet as they are.
    const bool plugs = bay != nullptr && parts::cased(drive.form) && !of_edsff(form) && !of_edsff(drive.form);
    if (!turned && !(adapter != nullptr && plugs))
      return {Answer::no,
              {Code::connector_differs, {{"drive", form_name(drive.outer())}, {"place", form_name(form)}}, {}}};
    if (turned)
      return {Answer::with_adapter,
              {Code::adapter_needed,
               {{"drive", form_name(drive.form)}, {"place", form_name(form)}, {"adapter", std::string(adapter->id)}},
               {}}};
  }
  if (auto refused = key_in_adapter(drive)) return std::move(*refused);
  if (const auto* socket = std::get_if<M2Socket>(&place.socket)) return key_question(socket->key, drive.card.keys);
  if (const auto* slot = std::get_if<CardSlot>(&place.socket)) return slot_question(drive, *slot);
  const auto* bay = std::get_if<Bay>(&place.socket);
  if (bay == nullptr || of_edsff(form)) return {Answer::yes, {Code::one_connector, {{"form", form_name(form)}}, {}}};
  const bool enters = connectors::mate(plug_of(drive), bay->receptacle).enters;
  return {enters ? Answer::yes : Answer::no,
          plug_reason(drive, *bay, enters ? Code::plug_enters : Code::plug_enters_not)};
}

std::string wired(const Place& place) {
  std::string out;
  for (const links::Link& link : place.bus) out += (out.empty() ? "" : " and ") + links::in_words(link);
  return out;
}

/// What the standard lets pass between this drive and this socket, at most.
links::Link limited(const Drive& drive, const Place& place) {
  links::Link link = drive.bus;
  if (link.protocol != links::Protocol::pcie) return link;
  if (const auto* socket = std::get_if<M2Socket>(&place.socket); socket != nullptr && drive.form == Form::m2) {
    const m2::Carries most = m2::may_carry(socket->key, drive.card.keys);
    if (most.pcie_lanes > 0) link.lanes = std::min(link.lanes, most.pcie_lanes);
  }
  if (const auto* slot = std::get_if<CardSlot>(&place.socket)) {
    link.lanes = std::min(link.lanes, slot->lanes);
    const std::size_t position = drive.worn ? static_cast<std::size_t>(drive.worn->position) : 1;
    if (position <= slot->splits.size()) link.lanes = std::min(link.lanes, slot->splits[position - 1]);
  }
  return link;
}

/// Behind a carrier with several sockets the host must have split the slot for all but the first.
bool unsplit(const Drive& drive, const Place& place) {
  const auto* slot = std::get_if<CardSlot>(&place.socket);
  if (slot == nullptr || !drive.worn || drive.outer() != Form::add_in_card) return false;
  return drive.worn->position > static_cast<int>(std::max<std::size_t>(1, slot->splits.size()));
}

Question bus_question(const Drive& drive, const Place& place, std::optional<links::Link>& settled) {
  const std::string speaks = links::in_words(drive.bus);
  if (drive.worn && drive.worn->adapter->carries && *drive.worn->adapter->carries != drive.bus.protocol)
    return {Answer::no,
            {Code::adapter_passes_not,
             {{"adapter", drive.worn->name}, {"drive", speaks}, {"cannot", drive.worn->adapter->cannot}},
             {}}};
  if (unsplit(drive, place))
    return {Answer::no, {Code::bus_not_split, {}, {{"position", static_cast<double>(drive.worn->position)}}}};
  const auto* bay = std::get_if<Bay>(&place.socket);
  if (bay != nullptr && parts::cased(drive.outer()) && !of_edsff(bay->form) &&
      !connectors::mate(plug_of(drive), bay->receptacle).works)
    return {Answer::no, plug_reason(drive, *bay, Code::plug_dead)};
  for (const links::Link& host : place.bus) {
    const auto link = links::settle(limited(drive, place), host);
    if (link && (!settled || links::megabytes(*link) > links::megabytes(*settled))) settled = link;
  }
  if (!settled) return {Answer::no, {Code::bus_absent, {{"drive", speaks}, {"wired", wired(place)}}, {}}};
  const double own = links::megabytes(drive.bus);
  const double got = links::megabytes(*settled);
  if (got >= own) return {Answer::yes, {Code::bus_full, {{"link", links::in_words(*settled)}}, {{"link rate", got}}}};
  return {Answer::yes,
          {Code::bus_slower,
           {{"drive", speaks}, {"link", links::in_words(*settled)}},
           {{"share", got / own}, {"drive rate", own}, {"link rate", got}}}};
}

}  // namespace

Connection connect(const Drive& drive, const Place& place) {
  Connection out;
  out.questions.form_factor = form_question(drive, place);
  out.questions.interface = interface_question(drive, place);
  const Code interface = out.questions.interface.why.code;
  const bool plugs = parts::cased(drive.form) && interface == Code::connector_differs;
  if (plugs || interface == Code::plug_enters_not || drive.form == Form::soldered) {
    // What does not go in carries nothing: one answer to both.
    out.questions.bus = {Answer::no, {Code::bus_with_interface, {}, {}}};
    return out;
  }
  out.questions.bus = bus_question(drive, place, out.link);
  return out;
}

}  // namespace baywright::fit
