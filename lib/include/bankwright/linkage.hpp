// Header-only or compiled? The one pair of macros that steers linkage; neither ever changes the shape of a type.
//
// A header x.hpp declares; where its bodies are heavy it ends with
//     #if BANKWRIGHT_HEADER_ONLY
//     #include "bankwright/folder/x_inl.hpp"
//     #endif
// and x_inl.hpp marks each body BANKWRIGHT_INLINE. lib/src/*.cpp include the _inl files once for the compiled twin.
#pragma once

#ifdef BANKWRIGHT_COMPILED
#define BANKWRIGHT_HEADER_ONLY 0
#define BANKWRIGHT_INLINE
#else
#define BANKWRIGHT_HEADER_ONLY 1
#define BANKWRIGHT_INLINE inline
#endif
