/** Small symmetric positive definite systems, dense, row by row. */

/** Lower triangle L of A = L·Lᵀ, in place of A's; A's upper triangle is not read. A must be positive definite. */
export const factored = (a: Float64Array, size: number): Float64Array => {
  for (let i = 0; i < size; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = a[i * size + j]!
      for (let k = 0; k < j; k++) sum -= a[i * size + k]! * a[j * size + k]!
      a[i * size + j] = i === j ? Math.sqrt(sum) : sum / a[j * size + j]!
    }
  }
  return a
}

/** x of L·x = b. */
export const forward = (l: Float64Array, size: number, b: Float64Array): Float64Array => {
  const x = Float64Array.from(b)
  for (let i = 0; i < size; i++) {
    let sum = x[i]!
    for (let k = 0; k < i; k++) sum -= l[i * size + k]! * x[k]!
    x[i] = sum / l[i * size + i]!
  }
  return x
}

/** x of L·Lᵀ·x = b. */
export const solved = (l: Float64Array, size: number, b: Float64Array): Float64Array => {
  const x = forward(l, size, b)
  for (let i = size - 1; i >= 0; i--) {
    let sum = x[i]!
    for (let k = i + 1; k < size; k++) sum -= l[k * size + i]! * x[k]!
    x[i] = sum / l[i * size + i]!
  }
  return x
}
