using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Units;

namespace PlankFit.Export.Words;

/// <summary>What lists, sheets and the terminal say about a plank, worded once for all of them.</summary>
public static class PlankWords
{
    /// <summary>How much of a round or hollow a bench cares for at all; less is called straight on paper, mm.</summary>
    private const double LeastShownMm = 0.25;

    public static string Of(Side side) => side == Side.Starboard ? "starboard" : "port";

    public static string Of(PlankKind kind) =>
        kind switch
        {
            PlankKind.Full => "full width",
            PlankKind.Master => "master",
            PlankKind.Tapered => "tapered",
            _ => "corner piece",
        };

    public static string Of(Heads heads) => heads == Heads.Aft ? "aft" : "forward";

    public static string Of(Severity severity) =>
        severity switch
        {
            Severity.Error => "error",
            Severity.Warning => "warning",
            _ => "note",
        };

    /// <summary>straight; round 1.5 mm; hollow 1 mm; round 1 mm and hollow 0.5 mm; none where the plank has no such edge.</summary>
    public static string Edge(PlankEdge edge, LengthUnit unit)
    {
        if (!edge.Exists)
        {
            return "none";
        }

        // What paper shows as nought is straight on it.
        string Told(string what, double mm) =>
            mm < LeastShownMm || LengthText.OnPaperMm(mm, unit) == 0
                ? ""
                : $"{what} {Small(mm, unit)}";
        string round = Told("round", edge.RoundMm),
            hollow = Told("hollow", edge.HollowMm);
        return (round, hollow) switch
        {
            ("", "") => "straight",
            (_, "") => round,
            ("", _) => hollow,
            _ => $"{round} and {hollow}",
        };
    }

    /// <summary>Both edges, and whether stock with straight edges serves.</summary>
    public static string Edges(Plank plank, LengthUnit unit)
    {
        string forward = Edge(plank.ForwardEdge, unit),
            after = Edge(plank.AfterEdge, unit);
        string shapes =
            forward == after
                ? $"Both edges {forward}"
                : $"Forward edge {forward}, after edge {after}";
        return plank.StraightEdges
            ? $"{shapes}; straight stock serves."
            : $"{shapes}; cut to the line: straight stock would {Misfit(plank, unit)}.";
    }

    /// <summary>Of a radius more times the thickness nobody bends anything: a figure for it says more than is known, our own, no source.</summary>
    private const double FlatTimes = 10_000;

    /// <summary>Whether there is a radius to tell of.</summary>
    public static bool IsBent(Bend bend, double thicknessMm, out double radiusMm)
    {
        radiusMm = bend.LeastRadiusMm ?? double.PositiveInfinity;
        return radiusMm < FlatTimes * thicknessMm;
    }

    /// <summary>The verdict on the bend with its numbers.</summary>
    public static string Bend(Plank plank, double thicknessMm, LengthUnit unit)
    {
        Bend bend = plank.Bend;
        string radius = IsBent(bend, thicknessMm, out double r)
            ? $"Least radius {Radius(r, unit)}, {Times(r / thicknessMm)} the thickness, "
                + LengthText.From(
                    bend.WorstAtMm,
                    unit,
                    $"the {Panel.InnerWordOf(plank.Id)} net end"
                )
            : "As good as flat";
        return $"Bend: {bend.Verdict}. {radius}; twist {Twist(bend.TwistDegreesPerMetre, unit)}.";
    }

    /// <summary>How a plank that is fitted at both ends goes in; empty for one that is not.</summary>
    public static string DropIn(Plank plank, LengthUnit unit)
    {
        if (!plank.FitBothEnds)
        {
            return "";
        }

        string scribe = string.Join(
            " and ",
            plank
                .Ends.Where(e => e.AllowanceMm > 0)
                .Select(e => $"{Small(e.AllowanceMm, unit)} at the {e.Word}")
        );
        string left = scribe.Length == 0 ? "" : $" Left to scribe away: {scribe}.";
        string way = plank.DropsIn switch
        {
            true => "Fits at both ends and drops in from outside.",
            false =>
                "Fits at both ends and does not drop in: its bevels lock it. Spring it in, or slide it in before its neighbour.",
            null => "Fits at both ends.",
        };
        return way + left;
    }

    /// <summary>A radius: to three figures in metres, 3.7 m, to the inch otherwise, 12'-1".</summary>
    public static string Radius(double mm, LengthUnit unit)
    {
        if (!LengthUnits.IsMetric(unit))
        {
            return LengthText.WholeInches(mm, unit);
        }

        double value = mm / 1000;
        int decimals =
            value >= 100 ? 0
            : value >= 10 ? 1
            : 2;
        return $"{NumberText.Trimmed(value, decimals)} m";
    }

    /// <summary>62 %: strain as a part of what a cold bend is trusted with.</summary>
    public static string StrainUsed(double? index) =>
        index is null ? "-" : StrainUsedNumber(index) + " %";

    /// <summary>62: rounded up, so that what reads 100 is within the limit.</summary>
    public static string StrainUsedNumber(double? index) =>
        index is { } i ? NumberText.Trimmed(Math.Ceiling((100 * i) - 1e-6), 0) : "-";

    /// <summary>To the half degree: 3° a metre; 1° a foot.</summary>
    public static string Twist(double degreesPerMetre, LengthUnit unit) =>
        LengthUnits.IsMetric(unit)
            ? $"{AngleText.ForPaper(Math.Abs(degreesPerMetre))} a metre"
            : $"{AngleText.ForPaper(Math.Abs(degreesPerMetre) * 0.3048)} a foot";

    /// <summary>A length of the size of a cut or a gap.</summary>
    public static string Small(double mm, LengthUnit unit, RoundTo mode = RoundTo.Nearest) =>
        LengthText.ForPaper(mm, unit, mode);

    /// <summary>How far out a centre of mass is, to 5 mm or half an inch: boards of one wood differ by more.</summary>
    public static string ToCentre(double mm, LengthUnit unit)
    {
        double step = LengthUnits.IsMetric(unit) ? 5 : LengthUnits.MmPerInch / 2;
        return LengthText.ForPaper(Math.Round(mm / step) * step, unit);
    }

    private static string Times(double ratio) =>
        $"{NumberText.Trimmed(Math.Floor(ratio), 0)} times";

    private static string Misfit(Plank plank, LengthUnit unit)
    {
        string gap = $"open by up to {Small(plank.WidestGapMm, unit, RoundTo.Up)}",
            overlap = $"overlap by up to {Small(plank.WidestOverlapMm, unit, RoundTo.Up)}";
        return IsNought(plank.WidestOverlapMm) && !IsNought(plank.WidestGapMm) ? gap
            : IsNought(plank.WidestGapMm) ? overlap
            : $"{gap} and {overlap}";

        bool IsNought(double mm) => mm <= 0 || LengthText.OnPaperMm(mm, unit, RoundTo.Up) == 0;
    }
}
