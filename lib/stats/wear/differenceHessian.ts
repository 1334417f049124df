/**
 * Hessian over the active coordinates from forward differences of an analytic gradient, made symmetric.
 *
 * gradientAt returns the gradient over the active coordinates at a moved point. Row by row.
 *
 * @param share step as a share of a coordinate, of 1 where it is smaller
 */
export function differenceHessian(
  point: Float64Array,
  active: readonly number[],
  gradient: Float64Array,
  gradientAt: (moved: Float64Array) => Float64Array,
  share = 1e-5,
): Float64Array {
  const size = active.length;
  const hessian = new Float64Array(size * size);
  const moved = Float64Array.from(point);
  active.forEach((j, column) => {
    const original = point[j] as number;
    const step = share * Math.max(1, Math.abs(original));
    moved[j] = original + step;
    const shifted = gradientAt(moved);
    moved[j] = original;
    for (let row = 0; row < size; row++) {
      const second = ((shifted[row] as number) - (gradient[row] as number)) / step;
      hessian[row * size + column] = (hessian[row * size + column] as number) + second / 2;
      hessian[column * size + row] = (hessian[column * size + row] as number) + second / 2;
    }
  });
  return hessian;
}
