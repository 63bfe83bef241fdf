#pragma once
// A figure on its way to another, for motion that can be switched off. No toolkit.
namespace baywright::viewer {

class Glide {
 public:
  explicit Glide(double at) : from_(at), to_(at) {}

  /// From where it is now, in so many seconds; 0: at once.
  void go(double to, double now, double seconds);
  void jump(double to) { from_ = to_ = to, seconds_ = 0.0; }
  [[nodiscard]] double at(double now) const;  // eased: slow at both ends
  [[nodiscard]] double goal() const { return to_; }
  [[nodiscard]] bool moving(double now) const { return now < start_ + seconds_; }

 private:
  double from_;
  double to_;
  double start_ = 0.0;
  double seconds_ = 0.0;
};

}  // namespace baywright::viewer
