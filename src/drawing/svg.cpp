#include "drawing/svg.hpp"

#include <algorithm>
#include <iterator>

#include <fmt/format.h>

#include "drawing/detail/clean_text.hpp"
#include "drawing/qr.hpp"

namespace wm::drawing {
namespace {

/// Millimetres to a thousandth, without trailing zeros.
std::string mm(double value) {
  std::string s = fmt::format("{:.3f}", value);
  s.erase(s.find_last_not_of('0') + 1);
  if (s.back() == '.') s.pop_back();
  return s == "-0" ? "0" : s;
}

/// Letters, digits, '-' and '_' only: it goes into an id.
std::string sound_id(const std::string& wish) {
  std::string id;
  for (char c : wish)
    if ((c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '-' ||
        c == '_')
      id += c;
  return id.empty() ? "drawing" : id;
}

class Writer {
 public:
  explicit Writer(Ground ground) : ground_(ground) {}

  void operator()(const Line& l) {
    if (l.pen.width <= 0) return;
    add(R"(<line x1="{}" y1="{}" x2="{}" y2="{}"{}/>)", mm(l.from.x), mm(l.from.y), mm(l.to.x),
        mm(l.to.y), paint({}, l.pen));
  }
  void operator()(const Path& p) {
    if (p.points.empty()) return;
    std::string d;
    for (const Point& at : p.points)
      d += fmt::format("{}{} {}", d.empty() ? "M" : "L", mm(at.x), mm(at.y));
    if (p.closed) d += "Z";
    add(R"(<path d="{}"{}/>)", d, paint(p.fill, p.pen));
  }
  void operator()(const Rect& r) {
    const std::string corner = r.corner > 0 ? fmt::format(R"( rx="{}")", mm(r.corner)) : "";
    add(R"(<rect x="{}" y="{}" width="{}" height="{}"{}{}/>)", mm(r.at.x), mm(r.at.y), mm(r.width),
        mm(r.height), corner, paint(r.fill, r.pen));
  }
  void operator()(const Circle& c) {
    add(R"(<circle cx="{}" cy="{}" r="{}"{}/>)", mm(c.centre.x), mm(c.centre.y), mm(c.radius),
        paint(c.fill, c.pen));
  }
  void operator()(const Text& t) {
    std::string text = detail::xml_text(t.text);
    std::ranges::replace(text, '\n', ' ');
    const char* anchor = t.anchor == Anchor::middle ? R"( text-anchor="middle")"
                         : t.anchor == Anchor::end  ? R"( text-anchor="end")"
                                                    : "";
    add(R"(<text x="{}" y="{}" font-size="{}"{}{} class="fill-{}" fill="{}">{}</text>)", mm(t.at.x),
        mm(t.at.y), mm(t.size), t.weight == Weight::bold ? R"( font-weight="bold")" : "", anchor,
        role_word(t.role), hex(colour(t.role, ground_)), text);
  }
  void operator()(const QrCode& q) {
    auto squares = qr_squares(q.text);
    if (!squares) {
      if (!problem_) problem_ = squares.error();
      return;
    }
    // A code is always dark on white with its quiet zone, also at night: phones need that.
    const double module = q.side / (squares->side + 2 * k_quiet_zone);
    std::string d;
    for (int y = 0; y < squares->side; ++y)
      for (int x = 0; x < squares->side;) {
        int run = 0;
        while (x + run < squares->side && squares->is_dark(x + run, y)) ++run;
        if (run > 0)
          d += fmt::format("M{} {}h{}v{}h-{}z", mm(q.at.x + (x + k_quiet_zone) * module),
                           mm(q.at.y + (y + k_quiet_zone) * module), mm(run * module), mm(module),
                           mm(run * module));
        x += std::max(run, 1);
      }
    add(R"(<rect x="{}" y="{}" width="{}" height="{}" fill="#ffffff"/>)", mm(q.at.x), mm(q.at.y),
        mm(q.side), mm(q.side));
    add(R"(<path d="{}" fill="#000000" shape-rendering="crispEdges"/>)", d);
  }

  [[nodiscard]] const std::string& body() const { return body_; }
  [[nodiscard]] const std::optional<Problem>& problem() const { return problem_; }

 private:
  template <class... Args>
  void add(fmt::format_string<Args...> form, Args&&... args) {
    fmt::format_to(std::back_inserter(body_), form, std::forward<Args>(args)...);
    body_ += '\n';
  }

  [[nodiscard]] std::string paint(std::optional<Role> fill, const Pen& pen) const {
    const bool stroked = pen.width > 0;
    std::string classes;
    if (fill) classes += "fill-" + role_word(*fill);
    if (stroked) classes += (classes.empty() ? "" : " ") + ("line-" + role_word(pen.role));
    std::string out;
    if (!classes.empty()) out += fmt::format(R"( class="{}")", classes);
    out += fmt::format(R"( fill="{}")", fill ? hex(colour(*fill, ground_)) : "none");
    if (stroked)
      out += fmt::format(R"( stroke="{}" stroke-width="{}")", hex(colour(pen.role, ground_)),
                         mm(pen.width));
    if (stroked && pen.dash_on > 0)
      out += fmt::format(R"( stroke-dasharray="{} {}")", mm(pen.dash_on), mm(pen.dash_off));
    return out;
  }

  Ground ground_;
  std::string body_;
  std::optional<Problem> problem_;
};

Result<std::string> document(const Page& page, const std::string& title,
                             const std::string& description, const SvgOptions& options) {
  if (auto sound = check(page); !sound) return Fail(sound.error());
  Writer writer{options.ground};
  if (options.with_ground) writer(Rect{{0, 0}, page.width, page.height, 0, Role::paper, {}});
  for (const Item& item : page.items) std::visit(writer, item);
  if (writer.problem()) return Fail(*writer.problem());

  const std::string id = sound_id(options.id);
  const std::string size =
      options.sized ? fmt::format(R"( width="{}mm" height="{}mm")", mm(page.width), mm(page.height))
                    : "";
  const bool spoken = !title.empty();
  std::string out = fmt::format(
      R"(<svg xmlns="http://www.w3.org/2000/svg"{} viewBox="0 0 {} {}" font-family="DejaVu Sans, system-ui, sans-serif" font-variant="tabular-nums"{}>)",
      size, mm(page.width), mm(page.height),
      spoken ? fmt::format(R"( role="img" aria-labelledby="{0}-title {0}-desc")", id) : "");
  out += '\n';
  if (spoken) {
    out += fmt::format("<title id=\"{}-title\">{}</title>\n", id, detail::xml_text(title));
    out += fmt::format("<desc id=\"{}-desc\">{}</desc>\n", id, detail::xml_text(description));
  }
  return out + writer.body() + "</svg>\n";
}

}  // namespace

Result<std::string> svg(const Page& page, const SvgOptions& options) {
  return document(page, {}, {}, options);
}

Result<std::string> svg(const Fragment& fragment, const SvgOptions& options) {
  return document(fragment.page, fragment.title, fragment.description, options);
}

}  // namespace wm::drawing
