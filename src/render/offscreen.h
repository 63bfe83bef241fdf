#pragma once
// Pictures without a display: an EGL context of no surface. The display is kept for the life of the process. Not for a
// thread in which a window's context is current: that one draws with a canvas of its own.
#include "render/canvas.h"

#include <memory>
#include <string>
#include <variant>

namespace baywright::render {

class Offscreen {
 public:
  /// Refused, in words for people that say what to install, where no driver gives OpenGL 3.3 core.
  [[nodiscard]] static std::variant<Offscreen, std::string> make();
  Offscreen(Offscreen&&) noexcept;
  Offscreen& operator=(Offscreen&&) noexcept;
  ~Offscreen();

  [[nodiscard]] Canvas& canvas();  // its context is current from `make` to the end, or to the next one's `make`

 private:
  struct Data;
  explicit Offscreen(std::unique_ptr<Data> data);
  std::unique_ptr<Data> data_;
};

}  // namespace baywright::render
