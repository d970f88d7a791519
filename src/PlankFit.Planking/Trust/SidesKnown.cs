using MathNet.Numerics.LinearAlgebra;

namespace PlankFit.Planking.Trust;

/// <summary>What is known of the errors of the table's cells once something was taped: their covariance, a side each, mm².</summary>
public sealed record SidesKnown(Matrix<double> Starboard, Matrix<double> Port);
