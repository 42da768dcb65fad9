// SPDX-License-Identifier: BSL-1.0
#include "help.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <string_view>

namespace program {

heading const headings[7] = {
    {topic::in_wash, "What is in the wash?"},
    {topic::in_still, "What will the still give?"},
    {topic::how_strong, "How strong is the spirit?"},
    {topic::to_strength, "How do I bring it to the strength I want?"},
    {topic::in_bottles, "What goes into bottles and casks?"},
    {topic::how_sure, "How sure is it?"},
    {topic::your_own, "Your own instruments"},
};

service const services[7] = {
    {"help", "Print this list"},
    {"help <task>", "Print the options of a task, with an example"},
    {"write_manual <folder>", "Write manual pages into the folder"},
    {"write_completion <shell>", "Print the completion script for bash or zsh"},
    {"--version", "Print the version"},
    {"--sources", "Print the publications behind all results"},
    {"--cautions", "Print the usual cautions in full"},
};

std::string list_of_tasks() {
    auto const tasks = task::all();
    std::size_t width = 0;
    for (task const* each : tasks) width = (std::max)(width, std::string_view(each->who().name).size());

    page text;
    text.say("aqueth <task> [options]\nFigures for the distiller, with their uncertainty.");
    for (heading const& h : headings) {
        text.say("\n{}", h.text);
        for (task const* each : tasks) {
            if (each->who().listed_under == h.of)
                text.say("  {:<{}}  {}", each->who().name, width, each->who().question);
        }
    }
    text.say("\nAbout the program");
    for (service const& each : services) text.say("  {:<25} {}", each.words, each.what);
    text.say("\nExample: aqueth correct_reading --reading '81.5 %vol' --temperature '28 C'\n\n{}",
             vapour_caution);
    return text.text();
}

std::vector<std::string> words_of_services() {
    std::vector<std::string> words;
    for (service const& each : services) {
        std::string_view const all = each.words;
        std::string const word(all.substr(0, all.find(' ')));
        if (std::find(words.begin(), words.end(), word) == words.end()) words.push_back(word);
    }
    return words;
}

std::string task_name(std::string const& word) {
    std::string name = word;
    if (!name.starts_with('-')) std::replace(name.begin(), name.end(), '-', '_');
    return name;
}

task const& find_task(std::string const& word) {
    auto const tasks = task::all();
    std::string const name = task_name(word);
    std::vector<std::string> names;
    for (task const* each : tasks) {
        if (name == each->who().name) return *each;
        names.emplace_back(each->who().name);
    }
    std::vector<std::string> const others = words_of_services();
    names.insert(names.end(), others.begin(), others.end());
    std::string alike = nearest(name, names);
    if (alike.empty()) alike = nearest(fmt::format("--{}", name), others);  // "version"
    for (std::string const& each : names) {  // "dilute" is a part of dilute_spirit
        if (alike.empty() && name.size() > 2 && each.find(name) != std::string::npos) alike = each;
    }
    throw bad_input(fmt::format("there is no task {}; {}", printable(word),
                                alike.empty() || alike == name ? "'aqueth help' lists the tasks"
                                                               : fmt::format("did you mean {}?", alike)));
}

std::vector<correlation::source> all_sources() {
    std::vector<correlation::source> sources;
    auto const text = [](correlation::source const& s) { return std::string_view(s.citation); };
    for (task const* each : task::all()) {
        auto const& of_task = each->who().sources;
        sources.insert(sources.end(), of_task.begin(), of_task.end());
    }
    std::stable_sort(sources.begin(), sources.end(),
                     [&](auto const& a, auto const& b) { return text(a) < text(b); });
    sources.erase(std::unique(sources.begin(), sources.end(),
                              [&](auto const& a, auto const& b) { return text(a) == text(b); }),
                  sources.end());
    return sources;
}

}  // namespace program
