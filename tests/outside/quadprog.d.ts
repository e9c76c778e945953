declare module 'quadprog' {
  /** Least of ½ bᵀDb − dᵀb with Aᵀb ≥ b₀, after Goldfarb and Idnani. Every array counts from 1. */
  export function solveQP(
    D: readonly (readonly number[])[],
    d: readonly number[],
    A: readonly (readonly number[])[],
    b0: readonly number[],
    equalities?: number,
  ): { readonly solution: readonly number[]; readonly message: string };
}
