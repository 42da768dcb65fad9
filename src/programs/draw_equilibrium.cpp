// SPDX-License-Identifier: BSL-1.0
// A picture of the equilibrium: vapour over liquid, boiling and condensing temperatures, measured points.
#include "boiling.hpp"
#include "drawing.hpp"
#include "points.hpp"

#include <algorithm>
#include <cstddef>
#include <filesystem>
#include <iterator>
#include <string>
#include <utility>
#include <vector>

namespace {

using namespace program;

about const who{
    "draw_equilibrium",
    topic::in_still,
    "Liquid and vapour in equilibrium, as a picture",
    "Draws the equilibrium of ethanol and water at one pressure as an SVG picture: the vapour over the\n"
    "liquid, and the boiling and condensing temperatures; on request with measured points.",
    "The Quillbeck teaching stillhouse, 650 m above the sea, hangs a picture beside its still:\n"
    "  $ aqueth draw_equilibrium --output quillbeck.svg --altitude '650 m' --replace\n"
    "  Wrote quillbeck.svg: equilibrium of ethanol and water under 93.76 kPa.",
    boiling_sources()};

/// How a picture shows strengths.
struct strength_axis {
    basis kind;

    double number(mole_fraction x) const {
        return kind == basis::volume  ? to<volume_fraction>(x).percent()
               : kind == basis::mass  ? to<mass_fraction>(x).percent()
               : kind == basis::proof ? to<us_proof>(x).degrees()
                                      : x.percent();
    }
    char const* unit() const {
        return kind == basis::volume  ? "% vol"
               : kind == basis::mass  ? "% mass"
               : kind == basis::proof ? "US proof"
                                      : "% mol";
    }
    double end() const { return kind == basis::proof ? 200.0 : 100.0; }
};

strength_axis read_axis(given const& g) {
    notation const n = read_notation(g, g.text);
    bool const known =
        n.kind == basis::volume || n.kind == basis::mass || n.kind == basis::moles || n.kind == basis::proof;
    if (!known || n.factor != 1.0 || n.referenced) refuse(g, "expected %mol, %mass, %vol or proof");
    return {n.kind};
}

/// The name of a file of points in the picture.
std::string series_name(given const& file) {
    std::string name = std::filesystem::path(file.text).stem();
    std::replace(name.begin(), name.end(), '_', ' ');
    return name;
}

struct series : points_at_pressure {
    std::string name;
    std::string file;  ///< its name without folders
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

std::string script(std::filesystem::path const& path, units::pressure p, strength_axis axis,
                   wording const& words, std::vector<series> const& measured) {
    auto const shown = [axis](mole_fraction x) { return axis.number(x); };
    auto const degrees = [&](units::temperature t) { return words.temperature_number(t); };
    sketch::pairs composition, boiling, condensing;
    equilibrium_curve const curve(p);
    for (int k = 0; k <= 400; ++k) {
        double const u = k / 400.0;
        mole_fraction const x(u * u);  // close where the vapour rises steeply
        double const t = degrees(curve.temperature(x));
        composition.emplace_back(shown(x), shown(curve.vapour(x)));
        boiling.emplace_back(shown(x), t);
        condensing.emplace_back(shown(curve.vapour(x)), t);
    }
    char const* const unit = axis.unit();
    double const end = axis.end();
    sketch all;
    std::string left, right;
    all.add(left, composition, "lines " + line_style(0), "vapour over the liquid");
    all.add(left, {{0.0, 0.0}, {end, end}}, "lines dashtype 2 linecolor '#888888'",
            "as strong as the liquid");
    all.add(right, boiling, "lines " + line_style(0),
            measured.empty() ? "liquid, boiling" : "liquid, boiling (full points)");
    all.add(right, condensing, "lines " + line_style(1),
            measured.empty() ? "vapour, condensing" : "vapour, condensing (open points)");

    // full and open marks of one shape: circle, square, triangle, diamond, pentagon
    constexpr std::pair<int, int> marks[] = {{7, 6}, {5, 4}, {9, 8}, {13, 12}, {15, 14}};
    for (std::size_t k = 0; k < measured.size(); ++k) {
        sketch::pairs xy, tx, ty;
        for (equilibrium_point const& each : measured[k].points) {
            double const x = shown(each.liquid), y = each.vapour ? shown(*each.vapour) : 0.0;
            if (each.vapour) xy.emplace_back(x, y);
            if (!each.temperature) continue;
            tx.emplace_back(x, degrees(*each.temperature));
            if (each.vapour) ty.emplace_back(y, degrees(*each.temperature));
        }
        auto const& mark = marks[k % std::size(marks)];
        auto const dots = [&](int type) {
            return fmt::format("points pointsize 0.7 linewidth 1.5 linecolor '{}' pointtype {}",
                               colours[(k + 2) % colours.size()], type);
        };
        all.add(left, xy, dots(mark.first), "measured: " + measured[k].name);
        all.add(right, tx, dots(mark.first), "measured: " + measured[k].name);
        all.add(right, ty, dots(mark.second), "");
    }
    if (auto const most = azeotrope_at(p)) {
        double const x = shown(most->liquid), t = degrees(most->temperature);
        char const* const mark = "points pointtype 2 pointsize 1.4 linewidth 2.5 linecolor '#000000'";
        all.add(left, {{x, x}}, mark, fmt::format("azeotrope, {:.1f} {}", x, unit));
        all.add(right, {{x, t}}, mark, "azeotrope, " + words.exact_temperature(most->temperature));
    }
    return all.data() + picture_head(path, 1200, 640, "") +
           fmt::format(
               "set multiplot layout 1,2 title {}\n"
               "set xrange [0:{}]\nset xtics {}\n"
               "set yrange [0:{}]\nset ytics {}\nset key bottom right\n"
               "set xlabel 'ethanol in the liquid, {}'\nset ylabel 'ethanol in the vapour, {}'\n{}\n"
               "set autoscale y\nset ytics autofreq\nset key top right\n"
               "set xlabel 'ethanol in the liquid or the vapour, {}'\nset ylabel 'temperature, {}'\n{}\n"
               "unset multiplot\n",
               in_quotes("Ethanol and water under " + words.pressure(p)), end, end / 10.0, end, end / 10.0,
               unit, unit, left, unit, words.temperature_unit(), right);
}

void run(session& s) {
    given const& output = s.required("--output", "FILE", "picture file; its name ends in .svg or .png");
    bool const& replace = s.flag("--replace", "overwrite an existing file");
    surroundings const air = s.surroundings_options();
    auto const& files =
        s.repeated("--points", "FILE", "file of measured points to draw (see below); repeatable", false);
    given const& fraction =
        s.option("--in", "UNIT", "unit of strengths: %mol, %mass, %vol or proof", "%mol", "proof");
    s.explain(points_format);
    s.offer_us_units();
    s.parse();

    units::pressure const p = read_pressure(air);
    std::filesystem::path const path = read_picture_path(output, replace);
    std::vector<series> measured;
    for (given const& file : files)
        measured.push_back(
            {read_points(file, p), series_name(file), std::filesystem::path(file.text).filename()});
    strength_axis const axis = read_axis(fraction);
    wording const words = s.words();
    std::string const commands =
        on_behalf_of(air.decisive(), [&] { return script(path, p, axis, words, measured); });
    put_file(s, output, path, replace, picture_by_gnuplot(path, commands));

    page text;
    text.say("Wrote {}: equilibrium of ethanol and water under {}.", printable(output.text),
             words.pressure(p));
    text.gap();
    say_azeotrope(text, words, p);
    json data = {
        {"written", output.text}, {"pressure_kPa", in(p, kilopascal)}, {"azeotrope", azeotrope_to_json(p)}};
    for (series const& each : measured) {
        text.row("points", "{} from {}{}", each.points.size(), printable(each.file), each.in_words());
        json points = {{"name", each.name}, {"drawn", each.points.size()}};
        points.update(each.to_json());
        data["points"].push_back(points);
    }
    text.gap();
    text.say("{}", still_caution);
    s.answer(text, data);
}

program::task const offered{who, run};

}  // namespace
