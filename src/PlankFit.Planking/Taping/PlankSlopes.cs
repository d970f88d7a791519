using System.Collections.Immutable;
using MathNet.Numerics.LinearAlgebra;
using PlankFit.Planking.Findings;

namespace PlankFit.Planking.Taping;

/// <summary>How the lengths of planks and seams hang on the cells of the table, one side; port's are the same of its own cells.</summary>
/// <param name="Planks">To starboard, layer by layer, from forward.</param>
public sealed record PlankSlopes(ImmutableArray<SlopedPlank> Planks);

/// <summary>One plank's slopes, mm a mm of each cell.</summary>
/// <param name="Length">Of its own line, end to end.</param>
/// <param name="StockVariance">What the stock's own size adds to its length, mm²: no tape on the hull takes it away.</param>
/// <param name="AfterSeam">Null where that does not run from keel to chine.</param>
public sealed record SlopedPlank(
    PlankId Id,
    Vector<double> Length,
    double StockVariance,
    SlopedSeam? AfterSeam
);

/// <summary>A seam from keel to chine.</summary>
/// <param name="LengthMm">On the hull as drawn, on the face that its layer lies on.</param>
/// <param name="Held">Slopes of a tape between its marks, which stay where they are set out along keel and chine.</param>
/// <param name="Marched">Slopes of the edge of a fitted plank: laid on plank by plank from the master.</param>
public sealed record SlopedSeam(
    SeamMarks Marks,
    double LengthMm,
    Vector<double> Held,
    Vector<double> Marched
);
