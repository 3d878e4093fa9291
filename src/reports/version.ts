/** The version that is printed and that stands in machine output; a test holds it equal to the package's. */
export const version = '0.1.0'
