#pragma once
// A figure of a page (HTML) in which a model (GLB) is turned, zoomed, cut, taken apart and put in; where the browser
// cannot do that, a picture. It needs no network and no file beside the page.
#include <string>

namespace baywright::output {

/// What stands at the controls and is read aloud, in the page's language. Plain text: it is escaped here.
struct ModelWords {
  std::string model;     // what is shown and how it is used: "The card in its slot. Drag to turn it, or press the arrow
                         // keys; with Shift they move it, plus and minus zoom."
  std::string caption;   // below it; empty: none
  std::string controls;  // of all controls together: "What the model shows"
  std::string turn;      // of four buttons: "Turn"
  std::string turn_left;
  std::string turn_right;
  std::string turn_up;
  std::string turn_down;
  std::string zoom;  // of two buttons: "Zoom"
  std::string nearer;
  std::string farther;
  std::string reset;          // "As at first"
  std::string cut;            // of a slider: "Cut away"
  std::string cut_direction;  // of the choice between the next three: "From which side"
  std::string from_side;      // across the drive
  std::string from_end;       // along the drive, from the end away from its connector or toward it
  std::string from_above;     // from the side that the place opens to
  std::string show_why;       // of a button: "Cut at the tight spot"
  std::string apart;          // of a slider: "Take apart"
  std::string put_in;         // of a slider: "Put in"
  std::string play;           // of a button that puts it in by itself: "Play"
  std::string stop;           // of the same while it does: "Stop"
};

/// What stands there until the model can be shown, and on paper. Three wide to two high, as the model, so that nothing
/// jumps.
struct ModelPicture {
  std::string source;  // "data:image/png;base64,..."
  std::string words;   // its alternative text
  int width = 0;       // pixels
  int height = 0;
};

/// A <figure class="model">. `id` begins with a letter, holds letters, digits and hyphens only, and is like no other on
/// the page: the ids within begin with it and a hyphen. A <script> that is not run holds the GLB.
[[nodiscard]] std::string model_figure(const std::string& id, const std::string& glb, const ModelPicture& picture,
                                       const ModelWords& words);

/// For the page's <style>. The page may define --ink, --paper and --accent on :root, each of them light or dark
/// as it is read; where it does not, they are those of pictures, as the reader's system asks.
[[nodiscard]] std::string model_style();

/// For one <script> at the end of the page, once, however many figures it has: three.js with its licence, and what
/// makes the figures work. Neither "</script" nor "<!--" is in it.
[[nodiscard]] std::string model_script();

}  // namespace baywright::output
