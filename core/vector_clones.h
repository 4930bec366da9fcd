#pragma once
/// For plain loops over arrays that are worth two compilations.

// Before a function: it is compiled for every x86-64 machine and for those with AVX2, which are the
// most of them and up to twice as fast with it; the program takes its own when it starts. Without
// fused multiply-add both give the same bits. Sanitizers cannot start such a program.
#if defined(__x86_64__) && defined(__GNUC__) && !defined(__clang__) && \
    !defined(__SANITIZE_ADDRESS__) && !defined(__SANITIZE_THREAD__)
#define STROKEWRIGHT_VECTOR_CLONES __attribute__((target_clones("avx2", "default")))
#else
#define STROKEWRIGHT_VECTOR_CLONES
#endif
