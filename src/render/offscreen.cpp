#include "render/offscreen.h"

#include <array>
#include <epoxy/egl.h>
#include <optional>
#include <string_view>
#include <vector>

namespace baywright::render {

namespace {

constexpr const char* refusal =
    "pictures need OpenGL 3.3, and no driver here gives it without a display. Install the packages libegl-mesa0 and "
    "libgl1-mesa-dri, which draw on the processor (apt-get install libegl-mesa0 libgl1-mesa-dri). Drawings "
    "(`baywright draw`) need none of it";

/// A display that has been made ready, and what contexts on it are made of.
struct Screen {
  EGLDisplay display = EGL_NO_DISPLAY;
  EGLConfig config = nullptr;
};

EGLContext make_context(const Screen& screen) {
  if (eglBindAPI(EGL_OPENGL_API) != EGL_TRUE) return EGL_NO_CONTEXT;  // of this thread, so each time
  constexpr std::array<EGLint, 7> wanted = {
      EGL_CONTEXT_MAJOR_VERSION,           3,       EGL_CONTEXT_MINOR_VERSION, 3, EGL_CONTEXT_OPENGL_PROFILE_MASK,
      EGL_CONTEXT_OPENGL_CORE_PROFILE_BIT, EGL_NONE};
  return eglCreateContext(screen.display, screen.config, EGL_NO_CONTEXT, wanted.data());
}

/// Makes the display ready and tries a context on it. Whatever comes of it, it is never terminated: a software driver
/// that is taken out of memory leaves blocks behind that nothing points to any more.
std::optional<Screen> tried(EGLDisplay display) {
  Screen screen{display, nullptr};
  EGLint major = 0;
  EGLint minor = 0;
  if (display == EGL_NO_DISPLAY || eglInitialize(display, &major, &minor) != EGL_TRUE) return std::nullopt;
  constexpr std::array<EGLint, 5> wanted = {EGL_SURFACE_TYPE, 0, EGL_RENDERABLE_TYPE, EGL_OPENGL_BIT, EGL_NONE};
  EGLint found = 0;
  if (eglChooseConfig(display, wanted.data(), &screen.config, 1, &found) != EGL_TRUE || found < 1) return std::nullopt;
  EGLContext context = make_context(screen);
  if (context == EGL_NO_CONTEXT) return std::nullopt;
  const bool works = eglMakeCurrent(display, EGL_NO_SURFACE, EGL_NO_SURFACE, context) == EGL_TRUE;
  eglMakeCurrent(display, EGL_NO_SURFACE, EGL_NO_SURFACE, EGL_NO_CONTEXT);
  eglDestroyContext(display, context);
  return works ? std::optional<Screen>(screen) : std::nullopt;
}

/// Of the client: what is there before any display.
bool has(std::string_view extension) {
  const char* all = eglQueryString(EGL_NO_DISPLAY, EGL_EXTENSIONS);
  const std::string listed = ' ' + std::string(all != nullptr ? all : "") + ' ';
  return listed.find(' ' + std::string(extension) + ' ') != std::string::npos;
}

std::optional<Screen> find_screen() {
  if (!epoxy_has_egl()) return std::nullopt;
  const bool platforms = has("EGL_EXT_platform_base");
  if (platforms && has("EGL_MESA_platform_surfaceless"))
    if (auto screen = tried(eglGetPlatformDisplayEXT(EGL_PLATFORM_SURFACELESS_MESA, nullptr, nullptr))) return screen;
  if (platforms && has("EGL_EXT_platform_device") &&
      (has("EGL_EXT_device_base") || has("EGL_EXT_device_enumeration"))) {
    std::array<EGLDeviceEXT, 16> devices{};
    EGLint count = 0;
    if (eglQueryDevicesEXT(static_cast<EGLint>(devices.size()), devices.data(), &count) != EGL_TRUE) count = 0;
    for (EGLint i = 0; i < count; ++i)
      if (auto screen =
              tried(eglGetPlatformDisplayEXT(EGL_PLATFORM_DEVICE_EXT, devices[static_cast<std::size_t>(i)], nullptr)))
        return screen;
  }
  return tried(eglGetDisplay(EGL_DEFAULT_DISPLAY));
}

/// Found once and kept for the life of the process.
const std::optional<Screen>& screen() {
  static const std::optional<Screen> found = find_screen();
  return found;
}

}  // namespace

struct Offscreen::Data {
  EGLContext context = EGL_NO_CONTEXT;
  std::optional<Canvas> canvas;

  explicit Data(EGLContext with) : context(with) {}
  Data(const Data&) = delete;
  Data& operator=(const Data&) = delete;
  ~Data() {
    const EGLDisplay display = screen()->display;
    const EGLContext before = eglGetCurrentContext();
    const EGLSurface drawn = eglGetCurrentSurface(EGL_DRAW);
    const EGLSurface read = eglGetCurrentSurface(EGL_READ);
    const EGLDisplay of_before = eglGetCurrentDisplay();
    if (before != context) eglMakeCurrent(display, EGL_NO_SURFACE, EGL_NO_SURFACE, context);
    canvas.reset();
    if (before == EGL_NO_CONTEXT || before == context)
      eglMakeCurrent(display, EGL_NO_SURFACE, EGL_NO_SURFACE, EGL_NO_CONTEXT);
    else
      eglMakeCurrent(of_before, drawn, read, before);
    eglDestroyContext(display, context);
  }
};

std::variant<Offscreen, std::string> Offscreen::make() {
  if (!screen()) return refusal;
  EGLContext context = make_context(*screen());
  if (context == EGL_NO_CONTEXT) return refusal;
  auto data = std::make_unique<Data>(context);
  if (eglMakeCurrent(screen()->display, EGL_NO_SURFACE, EGL_NO_SURFACE, context) != EGL_TRUE) return refusal;
  auto canvas = Canvas::make();
  if (auto* fault = std::get_if<std::string>(&canvas)) return std::move(*fault);
  data->canvas.emplace(std::get<Canvas>(std::move(canvas)));
  return Offscreen(std::move(data));
}

Offscreen::Offscreen(std::unique_ptr<Data> data) : data_(std::move(data)) {}
Offscreen::Offscreen(Offscreen&&) noexcept = default;
Offscreen& Offscreen::operator=(Offscreen&&) noexcept = default;
Offscreen::~Offscreen() = default;

Canvas& Offscreen::canvas() {
  return *data_->canvas;
}

}  // namespace baywright::render
