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
)
{
    /// <summary>Null likewise.</summary>
    public SlopedSeam? ForwardSeam { get; init; }

    /// <summary>From the forward seam's mark at the keel to the after seam's at the chine; null where there is none.</summary>
    public SlopedSeam? Diagonal { get; init; }

    /// <summary>How it is offered up; null for one that does not run from keel to chine by straight slopes.</summary>
    public SlopedFit? Fit { get; init; }
}

/// <summary>A plank's own line and the angles of its ends, as drawn.</summary>
/// <param name="InboardMm">From its middle to the keel.</param>
/// <param name="OutboardMm">From its middle to the chine.</param>
/// <param name="InboardDegrees">From its own line, inboard to outboard, to the end's chord, forward corner to after one, counter-clockwise seen from outside.</param>
/// <param name="WidthMm">Of the plank at the keel, square across.</param>
/// <param name="InboardSlopes">Degrees of the angle at the keel for a mm of each cell.</param>
public sealed record SlopedFit(
    double InboardMm,
    double OutboardMm,
    double InboardDegrees,
    double OutboardDegrees,
    double WidthMm,
    Vector<double> InboardSlopes
)
{
    /// <summary>mm that the plank is short for a degree that it lies turned, counter-clockwise seen from outside: each end runs along its own edge.</summary>
    public double ShortADegree =>
        ((InboardMm * Cot(InboardDegrees)) + (OutboardMm * Cot(OutboardDegrees))) * Math.PI / 180;

    /// <summary>
    /// mm, square to the keel, by which the forward corner at the keel stands off more than the after one for a degree that the keel's edge is turned against the plank. A
    /// plank that is turned by a degree has its edge turned by minus one.
    /// </summary>
    public double OpensForwardADegree
    {
        get
        {
            double sine = Math.Sin(InboardDegrees * Math.PI / 180);
            return -(WidthMm / sine) * Math.PI / 180;
        }
    }

    private static double Cot(double degrees) => 1 / Math.Tan(degrees * Math.PI / 180);
}

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
