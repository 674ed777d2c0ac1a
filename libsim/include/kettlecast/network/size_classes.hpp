#pragma once

#include <vector>

/// A spread of piece sizes as a few sizes that stand for it.
namespace kettlecast {

/// Pieces of one size out of a spread.
struct SizeClass {
  double size;        ///< thickness or diameter [m]
  double mass_share;  ///< of the mass of all pieces [kg/kg]
};

/// Three sizes that stand for a lognormal spread, smallest first; one size if there is no spread.
///
/// Gauss quadrature of the distribution of mass over size, weighted by 1/size: total mass, mean
/// size, mean surface per mass and three more moments are kept exactly. The spread is by mass, as
/// sieving gives it. Pieces counted and measured one by one with number mean N have the mass mean
/// N (1 + s^2)^3 and the same s.
/// Source: Golub & Welsch, Math. Comp. 23 (1969) 221; recurrence of the Stieltjes-Wigert
///         polynomials, Szego, Orthogonal Polynomials (1939), section 2.7.
///
/// @param mean_size  mean by mass [m]
/// @param variation  coefficient of variation s, standard deviation over mean, 0 to 1 [-]
/// @throws InvalidArgument if either is out of range
std::vector<SizeClass> lognormal_size_classes(double mean_size, double variation);

/// Three sizes that stand for a normal spread, smallest first; one size if there is no spread.
///
/// Gauss-Hermite: D (1 - sqrt(3) s), D, D (1 + sqrt(3) s) with 1/6, 2/3, 1/6 of the mass. Total
/// mass, mean size and four more moments are kept exactly, mean surface per mass within 6 s^6.
/// Source: Abramowitz & Stegun (1964), table 25.10.
///
/// @param mean_size  mean by mass D [m]
/// @param variation  coefficient of variation s, 0 to 0.3 [-]
/// @throws InvalidArgument if either is out of range
std::vector<SizeClass> normal_size_classes(double mean_size, double variation);

}  // namespace kettlecast
