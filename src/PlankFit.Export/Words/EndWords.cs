using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Units;

namespace PlankFit.Export.Words;

/// <summary>An end of a plank in the words of the bench. Angles to the half degree, lengths to half a millimetre or 1/32 in.</summary>
public static class EndWords
{
    /// <summary>Corners whose bevels differ by less than this are given as one bevel: a saw's scale shows no finer, degrees.</summary>
    private const double SameBevelDegrees = 0.5;

    /// <summary>fit; fit, 15 mm to scribe away; left long by 25 mm.</summary>
    public static string Cut(PlankEnd end, LengthUnit unit) =>
        end.Cut == EndCut.LeftLong ? $"left long by {PlankWords.Small(end.OverhangMm ?? 0, unit)}"
        : end.AllowanceMm > 0 ? $"fit, {PlankWords.Small(end.AllowanceMm, unit)} to scribe away"
        : "fit";

    /// <summary>forward; after: an edge or a corner.</summary>
    public static string Edge(Toward which) => which == Toward.Forward ? "forward" : "after";

    /// <summary>square; 44° from square, leans aft going outboard.</summary>
    public static string FromSquare(PlankId plank, EndReading reading) =>
        reading.Leans == Toward.Neither
            ? "square"
            : $"{AngleText.ForPaper(reading.DegreesFromSquare)} from square, leans {Way(reading.Leans)} going {Panel.OutwardWordOf(plank)}";

    /// <summary>no fall; fall 146 mm across 150 mm, forward corner the longer.</summary>
    public static string Fall(EndReading reading, LengthUnit unit) =>
        reading.LongCorner == Toward.Neither ? "no fall"
        : IsSliver(reading, unit) ? Sliver(unit)
        : $"fall {PlankWords.Small(reading.FallMm, unit)} across {PlankWords.Small(reading.AcrossMm, unit)}, "
            + $"{Edge(reading.LongCorner)} corner the longer";

    /// <summary>Whether the end is so short that paper shows nought for it: a plank's corner that just touches another edge.</summary>
    public static bool IsSliver(EndReading reading, LengthUnit unit) =>
        LengthText.OnPaperMm(Math.Max(reading.FallMm, reading.AcrossMm), unit) == 0;

    /// <summary>under 1/32" across: no cut of its own.</summary>
    public static string Sliver(LengthUnit unit) =>
        $"under {LengthText.ForPaper(LengthText.PaperStepMm(unit), unit)} across: no cut of its own";

    /// <summary>no bevel; bevel 20°, outer face longer by 3.5 mm. Where it changes along the cut, both corners are named.</summary>
    public static string Bevel(Plank plank, PlankEnd end, double thicknessMm, LengthUnit unit)
    {
        var reading = EndReading.Of(plank, end, thicknessMm);
        if (
            reading.LongerFace == Face.Neither
            && Math.Abs(end.BevelAtLeastN) < SameBevelDegrees
            && Math.Abs(end.BevelAtGreatestN) < SameBevelDegrees
        )
        {
            return "no bevel";
        }

        string bevel = $"bevel {AngleText.ForPaper(Math.Abs(end.BevelDegrees))}";
        if (reading.LongerFace != Face.Neither)
        {
            string face = reading.LongerFace == Face.Outer ? "outer" : "inner";
            bevel += $", {face} face longer by {PlankWords.Small(reading.FaceLongerByMm, unit)}";
        }

        return Math.Abs(end.BevelAtGreatestN - end.BevelAtLeastN) < SameBevelDegrees
            ? bevel
            : $"{bevel} at mid-cut; {Corners(plank, end)}";
    }

    /// <summary>Everything about an end in one sentence, for lists: keel, fit: 45° from square, ...; fall ...; bevel ....</summary>
    public static string Sentence(Plank plank, PlankEnd end, double thicknessMm, LengthUnit unit)
    {
        var reading = EndReading.Of(plank, end, thicknessMm);
        string fall = reading.LongCorner == Toward.Neither ? "" : "; " + Fall(reading, unit);
        return $"{end.Word}, {Cut(end, unit)}: {FromSquare(plank.Id, reading)}{fall}; {Bevel(plank, end, thicknessMm, unit)}";
    }

    private static string Corners(Plank plank, PlankEnd end)
    {
        // Forward first, on either side.
        bool leastIsForward = EndReading.Along(plank.Side, positiveN: false) == Toward.Forward;
        (double forward, double after) = leastIsForward
            ? (end.BevelAtLeastN, end.BevelAtGreatestN)
            : (end.BevelAtGreatestN, end.BevelAtLeastN);
        return $"{Signed(forward, end)} at the forward corner, {Signed(after, end)} at the after";
    }

    /// <summary>A corner whose bevel goes the other way than mid-cut says which face is the longer there.</summary>
    private static string Signed(double degrees, PlankEnd end)
    {
        string size = AngleText.ForPaper(Math.Abs(degrees));
        return degrees * end.BevelDegrees >= 0 || Math.Abs(degrees) < EndReading.SquareWithinDegrees
            ? size
            : $"{size} the other way ({(degrees > 0 ? "outer" : "inner")} face longer)";
    }

    private static string Way(Toward toward) => toward == Toward.Forward ? "forward" : "aft";
}
