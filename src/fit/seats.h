#pragma once
// Inside the fit room: one function for each kind of place. `out.scene` stands on the host's.
#include "fit/host.h"
#include "fit/seated.h"

namespace baywright::fit {

/// What a card is seated in: a socket of the machine, or one that the drive brings on a carrier.
struct Stand {
  HostPlace at;
  std::set<int> carrier;  // elements of the board that has the socket
};

/// An M.2 card in a socket, held at its stand-off, wearing what the drive wears.
void seat_m2(Seated& out, const build::Drive& drive, const Stand& stand);
/// A mini card on its two posts.
void seat_mini(Seated& out, const build::Drive& drive, const Stand& stand);
/// An add-in card in its slot behind its bracket; on a carrier the M.2 card too.
void seat_card(Seated& out, const build::Drive& drive, const build::CardSlot& slot, const Stand& stand);
/// A cased drive in a bay or on a panel.
void seat_cased(Seated& out, const build::Drive& drive, const build::Place& place, const Stand& stand);

}  // namespace baywright::fit
