#pragma once
// Draws frames with OpenGL 3.3 core into a framebuffer of its own. Wants a current context; knows no window.
#include "render/frame.h"
#include "render/image.h"

#include <memory>
#include <string>
#include <variant>

namespace baywright::render {

class Canvas {
 public:
  /// Refused, in words for people, where the current context has no OpenGL 3.3 core.
  [[nodiscard]] static std::variant<Canvas, std::string> make();
  Canvas(Canvas&&) noexcept;
  Canvas& operator=(Canvas&&) noexcept;
  ~Canvas();  // the context must still be current, or lost

  /// Draws at this size, in pixels, multisampled where the driver can (and see `Frame::moving`). Keeps the frame until
  /// the next. A size below 1 is passed over; one beyond what the driver draws, or of more than 33 million pixels,
  /// leaves no picture. Framebuffers and viewport are given back as they were; depth test, blending, culling and
  /// scissors are off then, all is written, and nothing else is bound.
  void draw(const Frame& frame, int width, int height);
  /// What was drawn last; empty where nothing was.
  [[nodiscard]] Image read() const;
  /// The same drawn anew without samples. What is seen through or drawn over and has no number does not count; what is
  /// opaque and has none hides what is behind it.
  [[nodiscard]] Ids read_ids() const;
  /// What was drawn last as an OpenGL texture (its name; 0: nothing), first row at the bottom; owned by the canvas,
  /// another one at another size.
  [[nodiscard]] unsigned texture() const;
  [[nodiscard]] std::string driver() const;  // as OpenGL calls it, for messages

 private:
  struct Data;
  explicit Canvas(std::unique_ptr<Data> data);
  std::unique_ptr<Data> data_;
};

}  // namespace baywright::render
