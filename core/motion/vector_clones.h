#pragma once
/// STROKEWRIGHT_VECTOR_CLONES before a function that is one plain loop over arrays: the compiler
/// makes it twice, for every x86-64 machine and for those with AVX2, and the program takes the
/// better one when it starts. AVX2 without fused multiply-add, so both give the same bits.
/// Sanitizers, which cannot start such a program, and other machines get the one plain version.

#if defined(__x86_64__) && defined(__GNUC__) && !defined(__clang__) && \
    !defined(__SANITIZE_ADDRESS__) && !defined(__SANITIZE_THREAD__)
#define STROKEWRIGHT_VECTOR_CLONES __attribute__((target_clones("avx2", "default")))
#else
#define STROKEWRIGHT_VECTOR_CLONES
#endif
