using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Planks;

namespace PlankFit.Export.Words;

/// <summary>Which way along the hull: the word for a corner, an edge or a lean.</summary>
public enum Toward
{
    Neither,
    Forward,
    Aft,
}

/// <summary>A face of a plank.</summary>
public enum Face
{
    Neither,
    Outer,
    Inner,
}

/// <summary>
/// One end of a plank as the saw wants it. On the flat plank, outer face up, s runs outboard and n a quarter turn counter-clockwise of it: aft on a
/// starboard plank, forward on a port one. An end's chord stands at c counter-clockwise from +s and points to +n, so below 90° its corner towards +n is
/// the further outboard, above 90° the other. Whether that corner is also the longer depends on which way the end faces.
/// </summary>
/// <param name="FacesOutboard">True for an end with the plank on its inboard side (chine), false for the other (keel).</param>
/// <param name="Leans">Going outboard along the cut, the way that it drifts; Neither where it is square.</param>
/// <param name="LongCorner">The corner at which the plank is the longer; Neither where it is square.</param>
/// <param name="FallMm">How much further along the plank one corner of the net end stands than the other.</param>
/// <param name="AcrossMm">The width over which it falls: the plank's, or less where the plank meets two edges at one end.</param>
/// <param name="FaceLongerByMm">Measured square to the cut: thickness times the tangent of the bevel.</param>
public sealed record EndReading(
    bool FacesOutboard,
    double DegreesFromSquare,
    Toward Leans,
    Toward LongCorner,
    double FallMm,
    double AcrossMm,
    Face LongerFace,
    double FaceLongerByMm
)
{
    /// <summary>An angle smaller than this is nought on paper, where angles go to the half degree.</summary>
    public const double SquareWithinDegrees = 0.25;

    public static EndReading Of(Plank plank, PlankEnd end, double thicknessMm)
    {
        Vec2 least = end.NetLine[0],
            greatest = end.NetLine[^1],
            chord = greatest - least;
        bool outboard = FacesOutboardOf(plank, least, chord),
            square = end.DegreesFromSquare < SquareWithinDegrees,
            greatestFurtherOut = end.CutDegrees < 90;
        return new(
            outboard,
            end.DegreesFromSquare,
            square ? Toward.Neither : Along(plank.Side, greatestFurtherOut),
            square ? Toward.Neither : Along(plank.Side, greatestFurtherOut == outboard),
            Math.Abs(chord.X),
            Math.Abs(chord.Y),
            Math.Abs(end.BevelDegrees) < SquareWithinDegrees ? Face.Neither
                : end.BevelDegrees > 0 ? Face.Outer
                : Face.Inner,
            thicknessMm * Math.Tan(Math.Abs(end.BevelDegrees) * Math.PI / 180)
        );
    }

    /// <summary>The hull's direction of +n (or, where not positive, of -n) on a plank of that side.</summary>
    public static Toward Along(Side side, bool positiveN) =>
        positiveN == (side == Side.Starboard) ? Toward.Aft : Toward.Forward;

    /// <summary>
    /// The chord points to +n; a plank that lies to its left lies inboard of it. Judged at the net shape's centre of area, which is inside every
    /// shape that a plank of a bottom takes.
    /// </summary>
    private static bool FacesOutboardOf(Plank plank, Vec2 least, Vec2 chord) =>
        chord.Cross(Middle(plank.FlatNet) - least) > 0;

    private static Vec2 Middle(IReadOnlyList<Vec2> polygon)
    {
        Vec2 origin = polygon[0],
            sum = default;
        double twice = 0;
        for (int i = 1; i + 1 < polygon.Count; i++)
        {
            Vec2 a = polygon[i] - origin,
                b = polygon[i + 1] - origin;
            double area = a.Cross(b);
            twice += area;
            sum += area / 3 * (a + b);
        }

        return origin + (sum / twice);
    }
}
