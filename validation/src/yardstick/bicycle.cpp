// The equations of motion of docs/theory/bicycle.md once more, by other hands' tools: Boost.odeint steps them (its
// runge_kutta_dopri5 with error control), Boost.Math searches the slip, and the Magic Formula is evaluated as it stands.
// One manoeuvre in the open loop: a car on a straight brakes, and turns in while the brake comes off.
//
//   bicycle states    the states at each half second, at a tight tolerance, as CSV
//   bicycle time      how long a run takes at odeint's stock tolerance of 1e-6

#include <algorithm>
#include <array>
#include <boost/math/tools/roots.hpp>
#include <boost/numeric/odeint.hpp>
#include <cmath>
#include <cstdio>
#include <ctime>
#include <string>
#include <utility>
#include <vector>

namespace odeint = boost::numeric::odeint;

using State = std::array<double, 9>;
enum { VX, VY, YAW, PITCH, PITCH_RATE, ROLL, ROLL_RATE, FRONT_SLIP, REAR_SLIP };

constexpr double G = 9.81;

struct Tyre {
  bool brush;
  double friction_x, friction_y, sensitivity, reference, relaxation, cornering, slip, shape, curvature;

  // Fraction of the peak force at a normalised slip, and its slope.
  std::pair<double, double> curve(double x) const {
    if (brush) {
      double stick = std::max(0.0, 1 - x / 3);
      return {1 - stick * stick * stick, stick * stick};
    }
    double bx = x / shape;
    double bent = bx - curvature * (bx - std::atan(bx));
    double angle = shape * std::atan(bent);
    double inner = 1 - curvature * bx * bx / (1 + bx * bx);
    return {std::sin(angle), std::cos(angle) * inner / (1 + bent * bent)};
  }

  // Lateral force of a rolling wheel beside an imposed longitudinal one. The manoeuvre keeps far from every limit.
  double lateral(double slip_angle, double along, double load) const {
    double factor = std::max(0.0, 1 - sensitivity * (load / reference - 1)) * load;
    double y = std::fabs(slip_angle) * cornering / friction_y;
    if (!(factor > 0) || y == 0) return 0;
    double share = std::fabs(along) / (friction_x * factor);
    double length = y;
    if (share > 0) {
      auto rest = [&](double x) {
        auto [f, d] = curve(x);
        double ratio = y * y / (x * x);
        return std::make_pair(f * f * (1 - ratio) - share * share, 2 * f * (d * (1 - ratio) + f * ratio / x));
      };
      boost::uintmax_t rounds = 50;
      double guess = std::hypot(y, share);
      length = boost::math::tools::newton_raphson_iterate(rest, guess, y, std::hypot(y, 3.0), 40, rounds);
    }
    return std::copysign(friction_y * factor * curve(length).first * y / length, slip_angle);
  }
};

struct Car {
  double mass, to_front, to_rear, height, inertia, front_track, rear_track;
  double roll_share, front_centre, rear_centre, frequency, damping;
  double drag_area, front_downforce, rear_downforce, density, drag_height, brake_share;
  Tyre front, rear;
};

double smooth(double u) {
  u = std::min(1.0, std::max(0.0, u));
  return u * u * (3 - 2 * u);
}

struct Motion {
  const Car &car;
  long *evaluations;

  double steer(double t) const { return 0.05 * smooth((t - 0.8) / 0.8); }
  double brake(double t) const { return car.mass * 6.5 * smooth(t / 0.3) * (1 - smooth((t - 0.7) / 1.3)); }

  void operator()(const State &x, State &rate, double t) const {
    ++*evaluations;
    double wheelbase = car.to_front + car.to_rear;
    double vx = x[VX], vy = x[VY], yaw = x[YAW];
    double delta = steer(t), sin = std::sin(delta), cos = std::cos(delta);
    double pressure = 0.5 * car.density * vx * vx;
    double drag = pressure * car.drag_area;
    double front_load = car.mass * G * car.to_rear / wheelbase + pressure * car.front_downforce + x[PITCH];
    double rear_load = car.mass * G * car.to_front / wheelbase + pressure * car.rear_downforce - x[PITCH];
    double arm = car.height - (car.front_centre * car.to_rear + car.rear_centre * car.to_front) / wheelbase;
    double front_across = car.mass * x[ROLL] * (car.roll_share * arm + car.to_rear / wheelbase * car.front_centre) / car.front_track;
    double rear_across = car.mass * x[ROLL] * ((1 - car.roll_share) * arm + car.to_front / wheelbase * car.rear_centre) / car.rear_track;

    double front_true = std::tan(std::atan2(vy + car.to_front * yaw, vx) - delta);
    double rear_true = (vy - car.to_rear * yaw) / vx;
    double front_brake = brake(t) * car.brake_share / 2, rear_brake = brake(t) * (1 - car.brake_share) / 2;
    double fl = -car.front.lateral(x[FRONT_SLIP], front_brake, front_load / 2 - front_across);
    double fr = -car.front.lateral(x[FRONT_SLIP], front_brake, front_load / 2 + front_across);
    double rl = -car.rear.lateral(x[REAR_SLIP], rear_brake, rear_load / 2 - rear_across);
    double rr = -car.rear.lateral(x[REAR_SLIP], rear_brake, rear_load / 2 + rear_across);

    double body_x = -2 * front_brake * cos - (fl + fr) * sin - 2 * rear_brake;
    double front_y = (fl + fr) * cos - 2 * front_brake * sin;
    double body_y = front_y + rl + rr;
    double moment = car.to_front * front_y - car.to_rear * (rl + rr) - car.front_track / 2 * (fr - fl) * sin;
    rate[VX] = (body_x - drag) / car.mass + yaw * vy;
    rate[VY] = body_y / car.mass - yaw * vx;
    rate[YAW] = moment / car.inertia;
    double omega = 2 * M_PI * car.frequency;
    double settled = (car.height * (drag - body_x) - car.drag_height * drag) / wheelbase;
    rate[PITCH] = x[PITCH_RATE];
    rate[PITCH_RATE] = omega * omega * (settled - x[PITCH]) - 2 * car.damping * omega * x[PITCH_RATE];
    rate[ROLL] = x[ROLL_RATE];
    rate[ROLL_RATE] = omega * omega * (body_y / car.mass - x[ROLL]) - 2 * car.damping * omega * x[ROLL_RATE];
    rate[FRONT_SLIP] = vx / car.front.relaxation * (front_true - x[FRONT_SLIP]);
    rate[REAR_SLIP] = vx / car.rear.relaxation * (rear_true - x[REAR_SLIP]);
  }
};

Car car(bool brush) {
  return {780, 1.25, 1.15, 0.45, 980, 1.42, 1.44, 0.6, 0.03, 0.07, 1.8, 0.4, 0.6, 0.2, 0.3, 1.2, 0.4, 0.725,
          {brush, 1.2, 1.15, 0.08, 1900, 0.36, 17, 21, 1.4, -0.4},
          {brush, 1.2, 1.2, 0.08, 1900, 0.36, 20, 21, 1.4, -0.4}};
}

constexpr double SPEED = 40, END = 3;

State run(const Car &car, double tolerance, double until, long &evaluations) {
  State x{};
  x[VX] = SPEED;
  auto stepper = odeint::make_controlled(tolerance, tolerance, odeint::runge_kutta_dopri5<State>());
  odeint::integrate_adaptive(stepper, Motion{car, &evaluations}, x, 0.0, until, 1e-3);
  return x;
}

int main(int count, char **words) {
  bool timed = count > 1 && std::string(words[1]) == "time";
  if (!timed) std::printf("tyre,time_s,vx,vy,yaw_rate,pitch,pitch_rate,roll,roll_rate,front_slip,rear_slip\n");
  for (bool brush : {false, true}) {
    const char *name = brush ? "brush" : "magic-formula";
    Car driven = car(brush);
    long evaluations = 0;
    if (!timed) {
      for (double t = 0.5; t <= END; t += 0.5) {
        State x = run(driven, 1e-11, t, evaluations);
        std::printf("%s,%.1f", name, t);
        for (double value : x) std::printf(",%.12g", value);
        std::printf("\n");
      }
      continue;
    }
    run(driven, 1e-6, END, evaluations);
    long each = evaluations;
    double sink = 0;
    std::vector<double> micros;
    for (int round = 0; round < 41; round++) {
      std::clock_t begin = std::clock();
      for (int i = 0; i < 50; i++) sink += run(driven, 1e-6, END, evaluations)[VX];
      micros.push_back(1e6 * (std::clock() - begin) / CLOCKS_PER_SEC / 50);
    }
    std::sort(micros.begin(), micros.end());
    std::printf("C++ %-13s one run %.1f us of CPU (median of %zu), %ld evaluations, %.0f ns each%s\n", name, micros[20],
                micros.size(), each, 1e3 * micros[20] / each, sink == 0 ? " " : "");
  }
}
