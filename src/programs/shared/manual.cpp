// SPDX-License-Identifier: BSL-1.0
#include "manual.hpp"

#include "help.hpp"

#include <fmt/format.h>

#include <filesystem>
#include <fstream>
#include <string_view>
#include <vector>

namespace program {

namespace {

/// A text of the manual: signs that the formatter would read otherwise, and those beyond ASCII, by their
/// names.
std::string plain(std::string_view text) {
    std::string result;
    bool at_start = true;  // of a line, where . and ' begin a command of the formatter
    for (std::size_t i = 0; i < text.size(); ++i) {
        auto const c = static_cast<unsigned char>(text[i]);
        if (at_start && (c == '.' || c == '\'')) result += "\\&";
        at_start = c == '\n';
        if (c == '\\') {
            result += "\\e";
        } else if (c == '-') {
            result += "\\-";
        } else if (c == '\'') {
            result += "\\(aq";
        } else if (c == '^') {
            result += "\\(ha";
        } else if (c == '~') {
            result += "\\(ti";
        } else if (c == '`') {
            result += "\\(ga";
        } else if (c < 0x80) {
            result += text[i];
        } else {  // the bytes of one character of UTF-8
            unsigned code = c >= 0xf0 ? c & 0x07u : c >= 0xe0 ? c & 0x0fu : c & 0x1fu;
            while (i + 1 < text.size() && (static_cast<unsigned char>(text[i + 1]) & 0xc0u) == 0x80u)
                code = code << 6 | (static_cast<unsigned char>(text[++i]) & 0x3fu);
            result += fmt::format("\\[u{:04X}]", code);
        }
    }
    return result;
}

/// Text whose lines stay as they are.
std::string unfilled(std::string_view text) {
    std::string_view const trimmed_text = text.substr(0, text.find_last_not_of('\n') + 1);
    return fmt::format(".nf\n{}\n.fi\n", plain(trimmed_text));
}

/// Text that is broken into lines anew. Indented lines, and those behind them, stay apart.
std::string filled(std::string_view text) {
    std::string result;
    bool indented = false;
    for (std::string_view const line : lines_of(text)) {
        if (indented && !line.starts_with(' ')) result += ".br\n";
        indented = line.starts_with(' ');
        result += plain(line) + "\n";
    }
    return result;
}

/// Lines that are statements of their own.
std::string apart(std::string_view text) {
    std::string result;
    for (std::string_view const line : lines_of(text)) result += ".br\n" + plain(line) + "\n";
    return result;
}

/// The first line of a page. The section is 1, for commands.
std::string title(std::string const& name) {
    return fmt::format(".TH \"{}\" 1 \"\" \"aqueth {}\" \"aqueth\"\n.nh\n.ad l\n", plain(name),
                       aqueth::version);
}

std::string see_also(std::vector<std::string> const& pages) {
    std::string text = ".SH SEE ALSO\n";
    for (std::size_t i = 0; i < pages.size(); ++i)
        text += fmt::format(".BR {} (1){}\n", plain(pages[i]), i + 1 < pages.size() ? "," : "");
    return text;
}

/// The cautions, a paragraph for each of their headings. Their other lines are indented.
std::string cautions() {
    std::string result = ".SH CAUTIONS\n";
    for (std::string_view const line : lines_of(all_cautions))
        result += (line.starts_with(' ') ? "" : ".PP\n") + plain(trimmed(line)) + "\n";
    return result;
}

std::string page_of(task const& t) {
    about const& who = t.who();
    description const d = t.describe();
    std::string const page_name = fmt::format("aqueth-{}", who.name);
    std::string text = title(page_name);
    text += fmt::format(".SH NAME\n{} \\- {}\n", plain(page_name), plain(who.question));
    text += fmt::format(".SH SYNOPSIS\n.B aqueth {}\n", plain(who.name));
    bool optional = false;
    for (described_option const& o : d.options) {
        if (!o.required) {
            optional = true;
        } else if (!o.name.starts_with('-')) {
            text += fmt::format(".I {}\n", plain(o.name));
        } else {
            text += fmt::format(".B {}\n.I {}\n", plain(o.name), plain(o.type));
        }
    }
    if (optional) text += ".RI [ options ]\n";
    text += fmt::format(".SH DESCRIPTION\n{}", filled(who.purpose));
    text += ".SH OPTIONS\n";
    for (described_option const& o : d.options) {
        text += fmt::format(".TP\n.B {}{}{}\n", plain(o.name), o.type.empty() ? "" : " \\fI",
                            o.type.empty() ? "" : plain(o.type) + "\\fR");
        text += fmt::format("{}{}\n", plain(o.description), o.required ? " (required)" : "");
    }
    text += fmt::format(".SH NOTES\n{}", apart(d.notes));
    text += fmt::format(".SH EXAMPLE\n{}", unfilled(who.example));
    text += fmt::format(".SH SOURCES\n{}", filled(in_words(who.sources)));
    return text + cautions() + see_also({"aqueth"});
}

std::string page_of_all() {
    auto const tasks = task::all();
    std::string text = title("aqueth");
    text += ".SH NAME\naqueth \\- figures for the distiller, with their uncertainty\n";
    text += ".SH SYNOPSIS\n.B aqueth\n.I task\n.RI [ options ]\n.br\n.B aqueth help\n.RI [ task ]\n";
    text += ".SH DESCRIPTION\n"
            "aqueth computes the figures for each step of a distiller's work and states their uncertainty.\n"
            "A hyphen in the name of a task is read as an underscore.\n";
    std::vector<std::string> pages;
    for (heading const& h : headings) {
        text += fmt::format(".SS {}\n", plain(h.text));
        for (task const* each : tasks) {
            if (each->who().listed_under != h.of) continue;
            pages.push_back(fmt::format("aqueth-{}", each->who().name));
            text += fmt::format(".TP\n.B {}\n{}\n", plain(each->who().name), plain(each->who().question));
        }
    }
    text += ".SS About the program\n";
    for (service const& each : services)
        text += fmt::format(".TP\n.B {}\n{}\n", plain(each.words), plain(each.what));
    text += ".SH EXIT STATUS\n0 success, 2 wrong option or input, 1 any other failure.\n";
    return text + cautions() + see_also(pages);
}

void write(std::filesystem::path const& file, std::string const& text) {
    std::ofstream out(file, std::ios::binary);
    out << text;
    out.close();
    if (!out) throw failure(fmt::format("{} cannot be written", printable(file.string())));
}

}  // namespace

void write_manual(std::string const& folder) {
    std::error_code error;
    std::filesystem::path const into(folder);
    std::filesystem::create_directory(into, error);  // but no folders above it, which may be misspelt
    if (error) throw failure(fmt::format("{} cannot be made: {}", printable(folder), error.message()));
    write(into / "aqueth.1", page_of_all());
    for (task const* each : task::all())
        write(into / fmt::format("aqueth-{}.1", each->who().name), page_of(*each));
}

}  // namespace program
