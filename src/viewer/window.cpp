#include "viewer/window.h"

#include "viewer/screen.h"

#include <epoxy/gl.h>
// After epoxy, which stands in for its OpenGL headers.
#include <GLFW/glfw3.h>
#include <algorithm>
#include <array>
#include <backends/imgui_impl_glfw.h>
#include <backends/imgui_impl_opengl3.h>
#include <cctype>
#include <cmath>
#include <imgui.h>
#include <memory>
#include <utility>

namespace baywright::viewer {

namespace {

constexpr int settling_frames = 3;  // Dear ImGui knows what lies under the mouse only a frame later
constexpr double busy_wait = 0.05;  // s, until answers of the background are asked for again
constexpr double idle_wait = 1.0;   // s, until the file on disk is looked at again

std::string glfw_fault() {
  const char* what = nullptr;
  glfwGetError(&what);
  return what == nullptr ? std::string() : std::string(" (") + what + ')';
}

const std::string without = "; `baywright picture` and `baywright draw` work without a window";

constexpr std::array<std::pair<int, const char*>, 16> named = {{{GLFW_KEY_ESCAPE, "Escape"},
                                                                {GLFW_KEY_F1, "F1"},
                                                                {GLFW_KEY_F11, "F11"},
                                                                {GLFW_KEY_LEFT, "Left"},
                                                                {GLFW_KEY_RIGHT, "Right"},
                                                                {GLFW_KEY_UP, "Up"},
                                                                {GLFW_KEY_DOWN, "Down"},
                                                                {GLFW_KEY_ENTER, "Enter"},
                                                                {GLFW_KEY_KP_ENTER, "Enter"},
                                                                {GLFW_KEY_SPACE, "Space"},
                                                                {GLFW_KEY_TAB, "Tab"},
                                                                {GLFW_KEY_HOME, "Home"},
                                                                {GLFW_KEY_END, "End"},
                                                                {GLFW_KEY_PAGE_UP, "PageUp"},
                                                                {GLFW_KEY_PAGE_DOWN, "PageDown"},
                                                                {GLFW_KEY_DELETE, "Delete"}}};

/// What GLFW's callbacks hand over, between two frames.
struct Arrived {
  std::vector<Chord> chords;
  std::vector<std::filesystem::path> dropped;
  int frames_due = settling_frames;
};

Arrived& arrived(GLFWwindow* window) {
  return *static_cast<Arrived*>(glfwGetWindowUserPointer(window));
}

void on_key(GLFWwindow* window, int key, int code, int action, int mods) {
  Arrived& to = arrived(window);
  to.frames_due = settling_frames;
  if (action == GLFW_RELEASE) return;
  const bool ctrl = (mods & (GLFW_MOD_CONTROL | GLFW_MOD_SUPER)) != 0;
  const bool shift = (mods & GLFW_MOD_SHIFT) != 0;
  const auto* found = std::find_if(named.begin(), named.end(), [&](const auto& each) { return each.first == key; });
  if (found != named.end()) {
    to.chords.push_back({found->second, ctrl, shift});
  } else if (const char* name = ctrl ? glfwGetKeyName(key, code) : nullptr; name != nullptr) {
    std::string letter = name;
    const bool is_letter = letter.size() == 1 && std::isalpha(static_cast<unsigned char>(letter[0])) != 0;
    to.chords.push_back({letter, true, shift && is_letter});
  }
}

/// Letters without Ctrl come as what they write, whatever the layout.
void on_letter(GLFWwindow* window, unsigned letter) {
  Arrived& to = arrived(window);
  if (letter <= ' ' || letter >= 127) return;
  to.chords.push_back({std::string(1, static_cast<char>(std::tolower(static_cast<int>(letter)))), false, false});
}

void on_drop(GLFWwindow* window, int count, const char** files) {
  Arrived& to = arrived(window);
  for (int i = 0; i < count; ++i) to.dropped.emplace_back(files[i]);
  to.frames_due = settling_frames;
}

/// Any other event draws anew.
template <typename... Values>
void on_any(GLFWwindow* window, Values...) {
  arrived(window).frames_due = settling_frames;
}

struct GlfwEnd {
  void operator()(GLFWwindow* window) const { glfwDestroyWindow(window); }
};

/// GLFW, its window, and Dear ImGui in it, in the order in which they come and go.
class Host {
 public:
  std::optional<std::string> start(const WindowOptions& options) {
    if (glfwInit() != GLFW_TRUE) return "there is no display to open a window on" + glfw_fault() + without;
    started_ = true;
    glfwWindowHint(GLFW_CONTEXT_VERSION_MAJOR, 3);
    glfwWindowHint(GLFW_CONTEXT_VERSION_MINOR, 3);
    glfwWindowHint(GLFW_OPENGL_PROFILE, GLFW_OPENGL_CORE_PROFILE);
    glfwWindowHint(GLFW_OPENGL_FORWARD_COMPAT, GLFW_TRUE);
    window_.reset(glfwCreateWindow(options.width, options.height, "baywright", nullptr, nullptr));
    if (!window_) return "the window needs OpenGL 3.3, which this display does not give" + glfw_fault() + without;
    glfwSetWindowSizeLimits(window_.get(), 900, 600, GLFW_DONT_CARE, GLFW_DONT_CARE);
    glfwMakeContextCurrent(window_.get());
    glfwSwapInterval(1);
    glfwSetWindowUserPointer(window_.get(), &arrived_);
    glfwSetKeyCallback(window_.get(), on_key);
    glfwSetCharCallback(window_.get(), on_letter);
    glfwSetDropCallback(window_.get(), on_drop);
    glfwSetCursorPosCallback(window_.get(), on_any<double, double>);
    glfwSetMouseButtonCallback(window_.get(), on_any<int, int, int>);
    glfwSetScrollCallback(window_.get(), on_any<double, double>);
    glfwSetWindowFocusCallback(window_.get(), on_any<int>);
    glfwSetCursorEnterCallback(window_.get(), on_any<int>);
    glfwSetFramebufferSizeCallback(window_.get(), on_any<int, int>);
    glfwSetWindowRefreshCallback(window_.get(), on_any<>);
    glfwSetWindowContentScaleCallback(window_.get(), on_any<float, float>);
    ImGui::CreateContext();
    ImGui::GetIO().IniFilename = nullptr;  // layout is ours
    imgui_ = ImGui_ImplGlfw_InitForOpenGL(window_.get(), true) && ImGui_ImplOpenGL3_Init("#version 330 core");
    if (!imgui_) return "the window needs OpenGL 3.3, which this display does not give" + without;
    return std::nullopt;
  }

  Host() = default;
  Host(const Host&) = delete;
  Host& operator=(const Host&) = delete;
  ~Host() {
    if (imgui_) {
      ImGui_ImplOpenGL3_Shutdown();
      ImGui_ImplGlfw_Shutdown();
    }
    if (ImGui::GetCurrentContext() != nullptr) ImGui::DestroyContext();
    window_.reset();
    if (started_) glfwTerminate();
  }

  [[nodiscard]] GLFWwindow* window() const { return window_.get(); }
  [[nodiscard]] Arrived& arrivals() { return arrived_; }

 private:
  Arrived arrived_;
  std::unique_ptr<GLFWwindow, GlfwEnd> window_;
  bool started_ = false;
  bool imgui_ = false;
};

/// How large everything is to be, and how many pixels a unit of the window has.
struct Density {
  float scale = 1.0F;
  float dense = 1.0F;
  bool operator==(const Density&) const = default;
};

Density density(GLFWwindow* window, double users) {
  int width = 0;
  int height = 0;
  int pixels = 0;
  float content = 1.0F;
  float other = 1.0F;
  glfwGetWindowSize(window, &width, &height);
  glfwGetFramebufferSize(window, &pixels, &height);
  glfwGetWindowContentScale(window, &content, &other);
  const float dense = width > 0 && pixels > 0 ? static_cast<float>(pixels) / static_cast<float>(width) : 1.0F;
  // Where the system already makes units larger than pixels, its scale is in `dense` and must not count twice.
  const float own = std::clamp(content / dense, 0.5F, 4.0F);
  return {own * static_cast<float>(users), dense};
}

class Loop {
 public:
  Loop(Host& host, Screen& screen, std::function<void(int, double, bool, const std::string&)> drawn)
      : host_(host), screen_(screen), drawn_(std::move(drawn)) {}

  std::optional<std::string> run() {
    GLFWwindow* window = host_.window();
    Arrived& in = host_.arrivals();
    while (!screen_.session().closing()) {
      wait();
      for (const auto& file : std::exchange(in.dropped, {})) screen_.session().open(file);
      if (glfwWindowShouldClose(window) == GLFW_TRUE) {
        glfwSetWindowShouldClose(window, GLFW_FALSE);
        screen_.session().act(Action::quit);
        in.frames_due = settling_frames;
      }
      if (screen_.session().tick(glfwGetTime()) || screen_.moving()) in.frames_due = std::max(in.frames_due, 1);
      if (in.frames_due == 0 || screen_.session().closing()) continue;
      --in.frames_due;
      if (auto fault = draw(std::exchange(in.chords, {}))) return fault;
      if (!ImGui::IsAnyMouseDown()) keep_settings();  // not each step of a drag
    }
    keep_settings();
    return std::nullopt;
  }

 private:
  void keep_settings() {
    std::string now = to_json(screen_.session().settings);
    if (now == kept_) return;
    write_settings(screen_.session().settings);
    kept_ = std::move(now);
  }

  void wait() {
    int width = 0;
    int height = 0;
    glfwGetFramebufferSize(host_.window(), &width, &height);
    const bool seen = width > 0 && height > 0 && glfwGetWindowAttrib(host_.window(), GLFW_ICONIFIED) == GLFW_FALSE;
    if (seen && (host_.arrivals().frames_due > 0 || screen_.moving())) return glfwPollEvents();
    glfwWaitEventsTimeout(screen_.session().waiting() ? busy_wait : idle_wait);
  }

  std::optional<std::string> draw(std::vector<Chord> chords) {
    GLFWwindow* window = host_.window();
    int width = 0;
    int height = 0;
    glfwGetFramebufferSize(window, &width, &height);
    if (width <= 0 || height <= 0) return std::nullopt;  // minimised
    if (const Density now = density(window, screen_.session().settings.scale); now != density_) {
      density_ = now;
      if (auto fault = screen_.set_scale(now.scale, now.dense)) return fault;
      ImGui_ImplOpenGL3_DestroyFontsTexture();
      ImGui_ImplOpenGL3_CreateFontsTexture();
      host_.arrivals().frames_due = settling_frames;
    }
    const bool working = screen_.session().waiting();  // before the frame: what came since is in the next one
    ImGui_ImplOpenGL3_NewFrame();
    ImGui_ImplGlfw_NewFrame();
    ImGui::NewFrame();
    screen_.draw(std::move(chords), glfwGetTime());
    ImGui::Render();
    glViewport(0, 0, width, height);
    glClear(GL_COLOR_BUFFER_BIT);
    ImGui_ImplOpenGL3_RenderDrawData(ImGui::GetDrawData());
    glfwSwapBuffers(window);
    if (std::string copy = screen_.session().take_copy(); !copy.empty()) glfwSetClipboardString(window, copy.c_str());
    if (std::string title = screen_.session().title(); title != title_) {
      title_ = std::move(title);
      glfwSetWindowTitle(window, title_.c_str());
    }
    ++frames_;
    if (drawn_) drawn_(frames_, glfwGetTime(), working, title_);
    return std::nullopt;
  }

  Host& host_;
  Screen& screen_;
  std::function<void(int, double, bool, const std::string&)> drawn_;
  Density density_{0.0F, 0.0F};
  std::string title_;
  std::string kept_;  // the settings as they were written last
  int frames_ = 0;
};

}  // namespace

std::optional<std::string> show_window(const WindowOptions& options) {
  Host host;
  if (auto fault = host.start(options)) return fault;
  auto screen = Screen::make(read_settings(), options.fit);
  if (auto* fault = std::get_if<std::string>(&screen)) return *fault + without;
  Screen& shown = *std::get<std::unique_ptr<Screen>>(screen);
  if (!options.file.empty())
    shown.session().open(options.file);
  else
    shown.session().page = Page::open;
  if (!options.shortlist.empty()) shown.session().open_shortlist(options.shortlist, options.wanted);
  return Loop(host, shown, options.drawn).run();
}

}  // namespace baywright::viewer
