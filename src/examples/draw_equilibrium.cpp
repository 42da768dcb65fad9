// SPDX-License-Identifier: BSL-1.0
// The equilibrium drawn: vapour over liquid, boiling and condensing temperatures, and measured points.
#include "boiling.hpp"
#include "drawing.hpp"
#include "points.hpp"

#include <algorithm>
#include <cstddef>
#include <iterator>
#include <string>
#include <utility>
#include <vector>

namespace {

using namespace program;

about const who{
    "draw_equilibrium",
    "Draws the equilibrium of ethanol and water under a pressure as an SVG picture: the vapour over\n"
    "the liquid, and the temperatures of boiling and condensing; measured points on it if wanted.",
    "The Quillbeck teaching stillhouse, 650 m above the sea, hangs a picture beside its still:\n"
    "  $ draw_equilibrium --output quillbeck.svg --altitude '650 m' --replace\n"
    "  Wrote quillbeck.svg: equilibrium of ethanol and water under 93.757 kPa.",
    boiling_sources()};

/// In which fraction a picture shows strengths.
double shown(mole_fraction x, basis in) {
    return in == basis::volume ? to<volume_fraction>(x).percent()
           : in == basis::mass ? to<mass_fraction>(x).percent()
                               : x.percent();
}

basis read_basis(given const& g) {
    notation const n = read_notation(g, g.text);
    bool const fraction = n.kind == basis::volume || n.kind == basis::mass || n.kind == basis::moles;
    if (!fraction || n.factor != 1.0 || n.referenced) refuse(g, "expected %mol, %mass or %vol");
    return n.kind;
}

/// What a file of points is called in the picture.
std::string series_name(given const& file) {
    std::string name = std::filesystem::path(file.text).stem();
    std::replace(name.begin(), name.end(), '_', ' ');
    return name;
}

struct series : points_at_pressure {
    std::string name;
};

/// A gnuplot script that grows: data, and what to plot of them.
class sketch {
public:
    using pairs = std::vector<std::pair<double, double>>;

    /// Adds x-y pairs to be plotted in a style. (Nothing is added if there are none.)
    void add(std::string& plot, pairs const& data, std::string const& style, std::string const& title) {
        if (data.empty()) return;
        std::string const name = fmt::format("$data{}", count_++);
        data_ += name + " << EOD\n";
        for (auto const& [x, y] : data) data_ += fmt::format("{:.6g} {:.6g}\n", x, y);
        data_ += "EOD\n";
        plot += fmt::format("{} {} with {} {}", plot.empty() ? "plot" : ",", name, style,
                            title.empty() ? "notitle" : "title " + in_quotes(title));
    }
    std::string const& data() const { return data_; }

private:
    std::string data_;
    int count_ = 0;
};

std::string script(units::pressure p, basis in, std::vector<series> const& measured) {
    auto const percent = [in](mole_fraction x) { return shown(x, in); };
    sketch::pairs composition, boiling, condensing;
    equilibrium_curve const curve(p);
    for (int k = 0; k <= 400; ++k) {
        double const u = k / 400.0;
        mole_fraction const x(u * u);  // close where the vapour rises steeply
        double const t = curve.temperature(x).celsius();
        composition.emplace_back(percent(x), percent(curve.vapour(x)));
        boiling.emplace_back(percent(x), t);
        condensing.emplace_back(percent(curve.vapour(x)), t);
    }
    char const* const unit = in == basis::volume ? "% vol" : in == basis::mass ? "% mass" : "% mol";
    sketch all;
    std::string left, right;
    all.add(left, composition, "lines linewidth 2.5 linecolor '#1f4e79'", "vapour over the liquid");
    all.add(left, {{0.0, 0.0}, {100.0, 100.0}}, "lines dashtype 2 linecolor '#888888'",
            "as strong as the liquid");
    all.add(right, boiling, "lines linewidth 2.5 linecolor '#1f4e79'",
            measured.empty() ? "liquid, boiling" : "liquid, boiling (full points)");
    all.add(right, condensing, "lines linewidth 2.5 linecolor '#b03a2e'",
            measured.empty() ? "vapour, condensing" : "vapour, condensing (open points)");

    char const* const colours[] = {"#d55e00", "#009e73", "#cc79a7", "#56b4e9", "#e69f00", "#666666"};
    for (std::size_t k = 0; k < measured.size(); ++k) {
        sketch::pairs xy, tx, ty;
        for (point const& each : measured[k].points) {
            double const x = percent(each.liquid), y = each.vapour ? percent(*each.vapour) : 0.0;
            if (each.vapour) xy.emplace_back(x, y);
            if (!each.temperature) continue;
            tx.emplace_back(x, each.temperature->celsius());
            if (each.vapour) ty.emplace_back(y, each.temperature->celsius());
        }
        auto const dots = fmt::format("points pointsize 0.6 linewidth 1.5 linecolor '{}' pointtype ",
                                      colours[k % std::size(colours)]);
        all.add(left, xy, dots + "7", measured[k].name);
        all.add(right, tx, dots + "7", measured[k].name);
        all.add(right, ty, dots + "6", "");
    }
    if (auto const most = azeotrope_at(p)) {
        double const x = percent(most->liquid), t = most->temperature.celsius();
        char const* const mark = "points pointtype 12 pointsize 1.2 linewidth 2 linecolor '#000000'";
        all.add(left, {{x, x}}, mark, fmt::format("azeotrope, {:.1f} {}", x, unit));
        all.add(right, {{x, t}}, mark, fmt::format("azeotrope, {:.2f} °C", t));
    }
    return all.data() +
           fmt::format(
               "set encoding utf8\n"
               "set terminal svg size 1200,640 font 'sans-serif,14' background '#ffffff' noenhanced\n"
               "set multiplot layout 1,2 title {}\n"
               "set border linecolor '#444444'\nset grid linecolor '#dddddd'\nset tics nomirror\n"
               "set xrange [0:100]\nset xtics 10\n"
               "set yrange [0:100]\nset ytics 10\nset key bottom right\n"
               "set xlabel 'ethanol in the liquid, {}'\nset ylabel 'ethanol in the vapour, {}'\n{}\n"
               "set autoscale y\nset ytics autofreq\nset key top right\n"
               "set xlabel 'ethanol in the liquid or the vapour, {}'\nset ylabel 'temperature, °C'\n{}\n"
               "unset multiplot\n",
               in_quotes("Ethanol and water under " + wording{}.pressure(p)), unit, unit, left, unit, right);
}

void run(session& s) {
    given const& output = s.required("--output", "FILE", "picture to write, a name that ends in .svg");
    bool const& replace = s.flag("--replace", "write it even if there is such a file already");
    surroundings const air = s.surroundings_options();
    auto const& files = s.repeated("--points", "FILE", "points to draw, see below; repeat", false);
    given const& fraction = s.option("--in", "UNIT", "of strengths: %mol, %mass or %vol", "%mol");
    s.explain(points_format);
    s.parse();

    units::pressure const p = read_pressure(air);
    std::filesystem::path const path = read_picture_path(output, replace);
    std::vector<series> measured;
    for (given const& file : files) measured.push_back({read_points(file, p), series_name(file)});
    basis const in_what = read_basis(fraction);
    std::string const commands = on_behalf_of(air.decisive(), [&] { return script(p, in_what, measured); });
    put_picture(s, output, path, svg_by_gnuplot(commands));

    page text;
    text.say("Wrote {}: equilibrium of ethanol and water under {}.", printable(output.text),
             wording{}.pressure(p));
    text.gap();
    say_azeotrope(text, {}, p);
    json data = {
        {"written", output.text}, {"pressure_kPa", in(p, kilopascal)}, {"azeotrope", azeotrope_to_json(p)}};
    for (series const& each : measured) {
        text.row("points", "{} of {}{}", each.points.size(), printable(each.name),
                 each.left_out == 0 ? "" : fmt::format("; {} of another pressure left out", each.left_out));
        data["points"].push_back(
            {{"name", each.name}, {"drawn", each.points.size()}, {"left_out", each.left_out}});
    }
    text.gap();
    text.say("{}", still_caution);
    s.answer(text, data);
}

}  // namespace

int main(int argc, char** argv) { return session(who, argc, argv).run(run); }
