// SPDX-License-Identifier: BSL-1.0
// The module aqueth._core: the functions of the C interface as functions of Python for numbers, and as
// ufuncs of numpy for arrays. functions.inc and enumerations.inc are made by generate.py.
#define PY_SSIZE_T_CLEAN
#include <Python.h>

#define NPY_NO_DEPRECATED_API NPY_1_19_API_VERSION
#include <numpy/arrayobject.h>
#include <numpy/ufuncobject.h>

#include <aqueth/c.h>

#include <algorithm>
#include <array>
#include <cfenv>
#include <cstddef>
#include <cstdint>
#include <cstring>
#include <limits>
#include <string>
#include <utility>

namespace {

struct enumeration {
    char const* name;
    int size;  // its values are 0, 1, ... size - 1
};

struct argument {
    char const* name;
    enumeration const* of;  // nullptr: a number
};

// A column of numbers; the distance between neighbours is counted in elements.
struct column {
    double* data;
    std::ptrdiff_t stride;
};

constexpr std::size_t most_arguments = 8;
constexpr std::size_t most_results = 6;

struct function {
    char const* name;
    char const* doc;
    char const* result_name;
    char const* result_doc;
    std::size_t arguments;
    std::size_t results;
    argument argument_list[most_arguments];
    PyStructSequence_Field result_list[most_results + 1];
    aqueth_status (*one)(double const* a, int const* e, double* r, aqueth_refusal* why);
    aqueth_status (*many)(std::size_t n, column const* in, int const* e, column const* out);
};

#include "enumerations.inc"

function functions[] = {
#include "functions.inc"
};
constexpr std::size_t function_count = std::size(functions);

// What the module keeps for each function.
struct {
    PyTypeObject* result;  // the tuple of several results
    PyObject* ufunc;
} made[function_count];

// --- numbers -------------------------------------------------------------------------------------------

// Arguments of one question: a number stands in `numbers`, the value of an enumeration in `codes`, at the
// same place.
struct question {
    double numbers[most_arguments];
    int codes[most_arguments];
};

PyObject* raise_refusal(function const& f, aqueth_refusal const& why) {
    char text[512];
    aqueth_refusal_text(&why, text, sizeof text);
    PyObject* const home = PyImport_ImportModule("aqueth.refusal");
    if (home == nullptr) return nullptr;
    PyObject* const type = PyObject_GetAttrString(home, "Refusal");
    Py_DECREF(home);
    if (type == nullptr) return nullptr;
    PyObject* const error = PyObject_CallFunction(type, "siiddds", f.name, why.argument, why.limit, why.value,
                                                  why.lower, why.upper, text);
    if (error != nullptr) PyErr_SetObject(type, error);
    Py_XDECREF(error);
    Py_DECREF(type);
    return nullptr;
}

PyObject* answer(std::size_t index, question const& asked) {
    function const& f = functions[index];
    double results[most_results];
    aqueth_refusal why;
    why.size = sizeof why;
    switch (f.one(asked.numbers, asked.codes, results, &why)) {
    case AQUETH_OK: break;
    case AQUETH_REFUSED: return raise_refusal(f, why);
    default: return PyErr_Format(PyExc_SystemError, "%s: a fault of aqueth", f.name);
    }
    if (f.results == 1) return PyFloat_FromDouble(results[0]);
    PyObject* const tuple = PyStructSequence_New(made[index].result);
    if (tuple == nullptr) return nullptr;
    for (std::size_t k = 0; k < f.results; ++k) {
        PyObject* const number = PyFloat_FromDouble(results[k]);
        if (number == nullptr) {
            Py_DECREF(tuple);
            return nullptr;
        }
        PyStructSequence_SetItem(tuple, static_cast<Py_ssize_t>(k), number);
    }
    return tuple;
}

// Sets the value of an enumeration; on failure raises an error that names it.
bool read_code(function const& f, argument const& a, PyObject* given, int& code) {
    long const number = PyLong_AsLong(given);
    if (number == -1 && PyErr_Occurred() != nullptr) {
        if (PyErr_ExceptionMatches(PyExc_TypeError))
            PyErr_Format(PyExc_TypeError, "%s: %s must be one value of %s, not %R", f.name, a.name,
                         a.of->name, given);
        else if (PyErr_ExceptionMatches(PyExc_OverflowError))
            PyErr_Format(PyExc_ValueError, "%s: %s has no value %R", f.name, a.of->name, given);
        return false;
    }
    if (number < 0 || number >= a.of->size) {
        PyErr_Format(PyExc_ValueError, "%s: %s has no value %ld, only 0 to %d", f.name, a.of->name, number,
                     a.of->size - 1);
        return false;
    }
    code = static_cast<int>(number);
    return true;
}

// Brings arguments given by name to their place. `rest` gets the names that are none of f's, their values
// follow the arguments. Returns false with an error set.
bool arrange(function const& f, PyObject* const* given, Py_ssize_t positional, PyObject* names,
             std::array<PyObject*, 32>& arranged, PyObject*& rest) {
    auto const wanted = static_cast<Py_ssize_t>(f.arguments);
    Py_ssize_t const named = names == nullptr ? 0 : PyTuple_GET_SIZE(names);
    if (positional > wanted) {
        PyErr_Format(PyExc_TypeError, "%s() takes %zd arguments, not %zd", f.name, wanted, positional);
        return false;
    }
    std::copy(given, given + positional, arranged.begin());
    std::fill(arranged.begin() + positional, arranged.end(), nullptr);
    std::array<PyObject*, 16> others;
    std::size_t left = 0;
    for (Py_ssize_t k = 0; k < named; ++k) {
        PyObject* const name = PyTuple_GET_ITEM(names, k);
        Py_ssize_t place = 0;
        while (place < wanted && PyUnicode_CompareWithASCIIString(name, f.argument_list[place].name) != 0)
            ++place;
        if (place == wanted) {
            if (left == others.size()) {
                PyErr_Format(PyExc_TypeError, "%s() got too many keywords", f.name);
                return false;
            }
            arranged[f.arguments + left] = given[positional + k];
            others[left++] = name;
        } else if (arranged[static_cast<std::size_t>(place)] != nullptr) {
            PyErr_Format(PyExc_TypeError, "%s() got two values for '%U'", f.name, name);
            return false;
        } else {
            arranged[static_cast<std::size_t>(place)] = given[positional + k];
        }
    }
    for (std::size_t k = 0; k < f.arguments; ++k)
        if (arranged[k] == nullptr) {
            PyErr_Format(PyExc_TypeError, "%s() needs the argument '%s'", f.name, f.argument_list[k].name);
            return false;
        }
    if (left > 0) {
        rest = PyTuple_New(static_cast<Py_ssize_t>(left));
        if (rest == nullptr) return false;
        for (std::size_t k = 0; k < left; ++k) {
            Py_INCREF(others[k]);
            PyTuple_SET_ITEM(rest, static_cast<Py_ssize_t>(k), others[k]);
        }
    }
    return true;
}

bool is_number(PyObject* object) {
    return PyFloat_Check(object) || PyLong_Check(object) || PyArray_IsScalar(object, Number) ||
           PyArray_IsZeroDim(object);
}

// Columns of pandas and of dask.dataframe go through aqueth.frames.
bool is_column(PyObject* object) {
    if (PyArray_Check(object) || PyFloat_Check(object) || PyLong_Check(object)) return false;
    PyObject* const home = PyObject_GetAttrString(reinterpret_cast<PyObject*>(Py_TYPE(object)), "__module__");
    char const* const name = home != nullptr && PyUnicode_Check(home) ? PyUnicode_AsUTF8(home) : nullptr;
    bool const found = name != nullptr && (std::strncmp(name, "pandas.", 7) == 0 ||
                                           std::strncmp(name, "dask.dataframe.", 15) == 0);
    Py_XDECREF(home);
    PyErr_Clear();
    return found;
}

PyObject* call_with_columns(function const& f, PyObject* const* arguments, PyObject* names) {
    PyObject* const home = PyImport_ImportModule("aqueth.frames");
    if (home == nullptr) return nullptr;
    PyObject* const call = PyObject_GetAttrString(home, "call");
    Py_DECREF(home);
    PyObject* const name = PyUnicode_FromString(f.name);
    PyObject* result = nullptr;
    if (call != nullptr && name != nullptr) {
        std::array<PyObject*, 33> given{name};
        std::copy_n(arguments, 32, given.begin() + 1);
        result = PyObject_Vectorcall(call, given.data(), f.arguments + 1, names);
    }
    Py_XDECREF(name);
    Py_XDECREF(call);
    return result;
}

// All that are not plain positional numbers: keywords, scalars and arrays of numpy, and what acts as an
// array.
PyObject* call_in_general(std::size_t index, PyObject* const* given, Py_ssize_t positional, PyObject* names) {
    function const& f = functions[index];
    std::array<PyObject*, 32> arguments;
    PyObject* rest = nullptr;
    if (!arrange(f, given, positional, names, arguments, rest)) return nullptr;
    PyObject* result = nullptr;
    question asked{};
    bool numbers = rest == nullptr;
    for (std::size_t k = 0; k < f.arguments; ++k) {
        argument const& a = f.argument_list[k];
        if (a.of == nullptr)
            numbers = numbers && is_number(arguments[k]);
        else if (!read_code(f, a, arguments[k], asked.codes[k]))
            goto done;
    }
    if (numbers) {
        for (std::size_t k = 0; k < f.arguments; ++k)
            if (f.argument_list[k].of == nullptr) {
                asked.numbers[k] = PyFloat_AsDouble(arguments[k]);
                if (asked.numbers[k] == -1.0 && PyErr_Occurred() != nullptr) goto done;
            }
        result = answer(index, asked);
    } else if (std::any_of(arguments.begin(), arguments.begin() + f.arguments, is_column)) {
        result = call_with_columns(f, arguments.data(), rest);
    } else {
        result = PyObject_Vectorcall(made[index].ufunc, arguments.data(), f.arguments, rest);
        if (result != nullptr && f.results > 1 && PyTuple_CheckExact(result)) {
            PyObject* const named =
                PyObject_CallOneArg(reinterpret_cast<PyObject*>(made[index].result), result);
            Py_DECREF(result);
            result = named;
        }
    }
done:
    Py_XDECREF(rest);
    return result;
}

// One function of Python for each of the table. Plain numbers take the short way.
template <std::size_t Index>
PyObject* call(PyObject*, PyObject* const* given, Py_ssize_t count, PyObject* names) {
    function const& f = functions[Index];
    if (names != nullptr || count != static_cast<Py_ssize_t>(f.arguments)) [[unlikely]]
        return call_in_general(Index, given, count, names);
    question asked;
    for (std::size_t k = 0; k < f.arguments; ++k) {
        PyObject* const object = given[k];
        argument const& a = f.argument_list[k];
        if (a.of != nullptr) {
            if (!read_code(f, a, object, asked.codes[k])) return nullptr;
        } else if (PyFloat_Check(object)) {
            asked.numbers[k] = PyFloat_AS_DOUBLE(object);
        } else if (PyLong_Check(object)) {
            asked.numbers[k] = PyLong_AsDouble(object);
            if (asked.numbers[k] == -1.0 && PyErr_Occurred() != nullptr) return nullptr;
        } else {
            return call_in_general(Index, given, count, names);
        }
    }
    return answer(Index, asked);
}

// --- arrays --------------------------------------------------------------------------------------------

constexpr auto element = static_cast<npy_intp>(sizeof(double));

double number_at(char const* place) {
    double number;
    std::memcpy(&number, place, sizeof number);
    return number;
}
void put(char* place, double number) { std::memcpy(place, &number, sizeof number); }

// The question of element i; false where an enumeration has no such value.
bool question_at(function const& f, char** args, npy_intp const* steps, npy_intp i, question& asked) {
    bool good = true;
    for (std::size_t k = 0; k < f.arguments; ++k) {
        char const* const place = args[k] + i * steps[k];
        if (enumeration const* const of = f.argument_list[k].of) {
            std::int64_t code;
            std::memcpy(&code, place, sizeof code);
            good = good && code >= 0 && code < of->size;
            asked.codes[k] = good ? static_cast<int>(code) : 0;
        } else {
            asked.numbers[k] = number_at(place);
        }
    }
    return good;
}

// The loop of a ufunc: as one run of the C interface where steps allow, else element by element.
void loop(char** args, npy_intp const* dimensions, npy_intp const* steps, void* data) {
    function const& f = *static_cast<function const*>(data);
    npy_intp const n = dimensions[0];
    column in[most_arguments];
    column out[most_results];
    bool in_one_run = true;
    for (std::size_t k = 0; k < f.arguments; ++k) {
        if (f.argument_list[k].of != nullptr) {
            in_one_run = in_one_run && (steps[k] == 0 || n == 1);
        } else {
            in_one_run = in_one_run && steps[k] % element == 0;
            in[k] = {reinterpret_cast<double*>(args[k]), steps[k] / element};
        }
    }
    for (std::size_t k = 0; k < f.results; ++k) {
        npy_intp const step = steps[f.arguments + k];
        in_one_run = in_one_run && step % element == 0;
        out[k] = {reinterpret_cast<double*>(args[f.arguments + k]), step / element};
    }
    question asked;
    if (in_one_run && n > 0 && question_at(f, args, steps, 0, asked)) {
        f.many(static_cast<std::size_t>(n), in, asked.codes, out);
    } else {
        for (npy_intp i = 0; i < n; ++i) {
            double results[most_results];
            if (!question_at(f, args, steps, i, asked) ||
                f.one(asked.numbers, asked.codes, results, nullptr) != AQUETH_OK)
                std::fill_n(results, f.results, std::numeric_limits<double>::quiet_NaN());
            for (std::size_t k = 0; k < f.results; ++k)
                put(args[f.arguments + k] + i * steps[f.arguments + k], results[k]);
        }
    }
    // A refused element is no fault of arithmetic: numpy shall not warn of it.
    std::feclearexcept(FE_ALL_EXCEPT);
}

// The loop that says why elements are refused: refused, argument, limit, value, lower, upper.
void reasons_loop(char** args, npy_intp const* dimensions, npy_intp const* steps, void* data) {
    function const& f = *static_cast<function const*>(data);
    char** const out = args + f.arguments;
    npy_intp const* const out_steps = steps + f.arguments;
    for (npy_intp i = 0; i < dimensions[0]; ++i) {
        question asked;
        double results[most_results];
        aqueth_refusal why{};
        why.size = sizeof why;
        why.value = why.lower = why.upper = std::numeric_limits<double>::quiet_NaN();
        bool const good = question_at(f, args, steps, i, asked) &&
                          f.one(asked.numbers, asked.codes, results, &why) == AQUETH_OK;
        npy_intp at = 0;
        auto const next = [&](npy_intp k) { return out[k] + i * out_steps[k]; };
        *next(at++) = good ? 0 : 1;
        for (int const code : {why.argument, why.limit}) {
            auto const number = static_cast<std::int32_t>(code);
            std::memcpy(next(at++), &number, sizeof number);
        }
        for (double const number : {why.value, why.lower, why.upper}) put(next(at++), number);
    }
    std::feclearexcept(FE_ALL_EXCEPT);
}

constexpr std::array reason_types{NPY_BOOL, NPY_INT32, NPY_INT32, NPY_DOUBLE, NPY_DOUBLE, NPY_DOUBLE};

// numpy keeps pointers to these.
struct {
    PyUFuncGenericFunction loop[1];
    void* data[1];
    char types[most_arguments + most_results];
} ufunc_parts[2 * function_count];

PyObject* make_ufunc(std::size_t index, bool of_reasons) {
    function& f = functions[index];
    auto& parts = ufunc_parts[2 * index + (of_reasons ? 1 : 0)];
    parts.loop[0] = of_reasons ? reasons_loop : loop;
    parts.data[0] = &f;
    std::size_t k = 0;
    for (; k < f.arguments; ++k)
        parts.types[k] = static_cast<char>(f.argument_list[k].of == nullptr ? NPY_DOUBLE : NPY_INT64);
    std::size_t const results = of_reasons ? reason_types.size() : f.results;
    for (std::size_t r = 0; r < results; ++r)
        parts.types[k++] = static_cast<char>(of_reasons ? reason_types[r] : NPY_DOUBLE);
    return PyUFunc_FromFuncAndData(parts.loop, parts.data, parts.types, 1, static_cast<int>(f.arguments),
                                   static_cast<int>(results), PyUFunc_None, f.name, f.doc, 0);
}

// --- the module ----------------------------------------------------------------------------------------

// The sentence of a refusal in an array, for Python's Reasons.
PyObject* refusal_text(PyObject*, PyObject* given) {
    aqueth_refusal why;
    why.size = sizeof why;
    if (PyArg_ParseTuple(given, "iiddd", &why.argument, &why.limit, &why.value, &why.lower, &why.upper) == 0)
        return nullptr;
    char text[512];
    aqueth_refusal_text(&why, text, sizeof text);
    return PyUnicode_FromString(text);
}

template <std::size_t... Index>
std::array<PyMethodDef, function_count + 2> methods_of(std::index_sequence<Index...>) {
    return {{{functions[Index].name, reinterpret_cast<PyCFunction>(reinterpret_cast<void (*)()>(call<Index>)),
              METH_FASTCALL | METH_KEYWORDS, functions[Index].doc}...,
             {"_refusal_text", refusal_text, METH_VARARGS, "Sentence of a refusal."},
             {nullptr, nullptr, 0, nullptr}}};
}
auto methods = methods_of(std::make_index_sequence<function_count>{});

PyModuleDef definition{PyModuleDef_HEAD_INIT,
                       "aqueth._core",
                       "The compiled part of aqueth.",
                       -1,
                       methods.data(),
                       nullptr,
                       nullptr,
                       nullptr,
                       nullptr};

bool add(PyObject* module) {
    PyObject* const ufuncs = PyDict_New();
    PyObject* const reasons = PyDict_New();
    PyObject* const named_results = PyDict_New();
    if (PyModule_AddObject(module, "_results", named_results) < 0 ||
        PyModule_AddObject(module, "_ufuncs", ufuncs) < 0 ||
        PyModule_AddObject(module, "_reasons", reasons) < 0)
        return false;
    for (std::size_t k = 0; k < function_count; ++k) {
        function& f = functions[k];
        made[k].ufunc = make_ufunc(k, false);
        PyObject* const why = make_ufunc(k, true);
        if (made[k].ufunc == nullptr || why == nullptr ||
            PyDict_SetItemString(ufuncs, f.name, made[k].ufunc) < 0 ||
            PyDict_SetItemString(reasons, f.name, why) < 0)
            return false;
        Py_DECREF(why);
        if (f.results == 1) continue;
        PyStructSequence_Desc description{f.result_name, f.result_doc, f.result_list,
                                          static_cast<int>(f.results)};
        made[k].result = PyStructSequence_NewType(&description);
        if (made[k].result == nullptr) return false;
        char const* const name = std::strrchr(f.result_name, '.') + 1;
        if (PyDict_SetItemString(named_results, f.name, reinterpret_cast<PyObject*>(made[k].result)) < 0)
            return false;
        Py_INCREF(made[k].result);
        if (PyModule_AddObject(module, name, reinterpret_cast<PyObject*>(made[k].result)) < 0) return false;
    }
    int const version = aqueth_version();
    std::string const text = std::to_string(version / 10000) + "." + std::to_string(version / 100 % 100) +
                             "." + std::to_string(version % 100);
    return PyModule_AddStringConstant(module, "__version__", text.c_str()) == 0;
}

}  // namespace

PyMODINIT_FUNC PyInit__core() {
    import_array();
    import_umath();
    PyObject* const module = PyModule_Create(&definition);
    if (module == nullptr) return nullptr;
    if (!add(module)) {
        Py_DECREF(module);
        return nullptr;
    }
    return module;
}
