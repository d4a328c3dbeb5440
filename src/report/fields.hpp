// Keys of documents, each written down once: the writer and the reader walk the same description.
//
// Fields<T>::visit(visitor, object) calls visitor(key, member[, unit]) in the order of the
// document; Words<E> lists the words an enumeration is written with.
#pragma once

#include <string_view>

namespace wetout::report {

template <class T>
struct Fields;
template <class E>
struct Words;

template <class T>
concept Described = requires {
  sizeof(Fields<T>);
};
template <class E>
concept Worded = requires {
  sizeof(Words<E>);
};

}  // namespace wetout::report
