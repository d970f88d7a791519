using System.Collections.Immutable;
using PlankFit.Export.Words;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Stock;
using PlankFit.Planking.Units;

namespace PlankFit.Export.Stock;

/// <summary>Cuts and boards in the words of the bench, as they lie on the cut sheet: the board's grain runs from left to right, the lower edge of a lane is the one that is drawn below.</summary>
public static class BoardCutWords
{
    /// <summary>A corner nearer than this to its lane's edge is on it, mm: outlines round their corners off by as much.</summary>
    private const double OnEdgeMm = 1.5;

    /// <summary>A cut within this of square is square on paper, degrees.</summary>
    private const double SquareDegrees = 0.25;

    /// <summary>douglas-fir, clear.</summary>
    public static string Wood(StockBoard board) =>
        string.Join(", ", new[] { board.Species, board.Grade }.Where(w => w is not null));

    public static string From(StockBoard board) => board.OnHand ? "on hand" : "to buy";

    public static string Kind(CutKind kind) =>
        kind switch
        {
            CutKind.Rip => "rip",
            CutKind.EndOff => "cut across all lanes",
            CutKind.Crosscut => "across",
            CutKind.Parting => "across, only to part them",
            CutKind.Edge => "along the piece",
            _ => "stop at its corners",
        };

    /// <summary>Without a measure, as data have it.</summary>
    public static string Kind(BoardCutList list, SawCut cut) =>
        cut.IsPlaned ? "plane"
        : cut.Kind == CutKind.EndOff ? Across(list, cut)
        : Kind(cut.Kind);

    /// <summary>cut across the whole board; all lanes; lane 3; lanes 3 and 4; lanes 3 to 6.</summary>
    private static string Across(BoardCutList list, SawCut cut)
    {
        if (cut.From.Y <= 0 && cut.To.Y >= list.Frame.WidthMm)
        {
            return "cut across the whole board";
        }

        int[] lanes =
        [
            .. Enumerable
                .Range(0, list.Lanes.Length)
                .Where(l =>
                    (list.Lanes[l].LowMm + list.Lanes[l].HighMm) / 2 is var middle
                    && middle > cut.From.Y
                    && middle < cut.To.Y
                )
                .Select(l => l + 1),
        ];
        return lanes.Length == list.Lanes.Length ? Kind(cut.Kind)
            : lanes.Length == 1 ? $"cut across lane {lanes[0]}"
            : $"cut across lanes {lanes[0]} {(lanes.Length == 2 ? "and" : "to")} {lanes[^1]}";
    }

    public static string Kind(BoardCutList list, SawCut cut, LengthUnit unit)
    {
        string line = cut.ToTheLine
            ? $", to the line ({PlankWords.Small(cut.OffMm, unit, RoundTo.Up)} off)"
            : "";
        return cut.Kind switch
        {
            CutKind.Rip when cut.IsPlaned =>
                $"plane off {PlankWords.Small(Math.Abs(cut.KerfMm), unit, RoundTo.Up)}, whole length",
            CutKind.Rip => "rip, whole length",
            CutKind.EndOff => Kind(list, cut),
            _ when cut.IsPlaned =>
                $"plane the {(cut.Kind != CutKind.Edge ? "end" : cut.KerfMm < 0 ? "lower edge" : "upper edge")}, at most {PlankWords.Small(Math.Abs(cut.KerfMm), unit, RoundTo.Up)}{(cut.ToTheLine ? ", to the line" : "")}",
            _ => $"{Kind(cut.Kind)}, {Beside(cut)}{line}",
        };
    }

    /// <summary>Of what is sawn in a lane, on which side of its line the kerf lies as the board lies on the sheet: kerf right; of an edge, kerf above.</summary>
    public static string Beside(SawCut cut) =>
        cut.Kind is CutKind.Rip or CutKind.EndOff ? KerfSide(cut)
        : cut.Kind == CutKind.Edge
            ? cut.KerfMm < 0 ? "kerf below"
                : "kerf above"
        : cut.KerfMm < 0 ? "kerf left"
        : "kerf right";

    /// <summary>ends S1-07; begins S1-08; both where one cut parts them.</summary>
    public static string Pieces(SawCut cut) =>
        (cut.Kind, cut.EndOf, cut.BeginOf) switch
        {
            (CutKind.Rip, _, _) => KerfSide(cut),
            (CutKind.EndOff, _, _) => cut.Ends.IsEmpty
                ? KerfSide(cut)
                : $"{(cut.IsNearEnd ? "begin" : "end of")} {string.Join(", ", cut.Ends)}",
            (CutKind.Edge, { } piece, _) => piece.ToString(),
            (_, { } ends, { } begins) => $"{ends} | {begins}",
            (_, { } ends, null) => $"end of {ends}",
            (_, null, { } begins) => $"begin {begins}",
            _ => "",
        };

    /// <summary>; S1-07 left long: 31 to 44 mm, square to its net end, where this cut makes such an end longer than its card asks.</summary>
    public static string LeftLong(BoardCutList list, SawCut cut, LengthUnit unit)
    {
        if (cut.Kind is CutKind.Rip or CutKind.Edge)
        {
            return "";
        }

        IEnumerable<string> Ends(PieceId? id, bool far) =>
            list
                .Board.Pieces.Where(p => p.Piece.Id == id)
                .SelectMany(p => p.Long)
                .Where(l => l.Far == far)
                .Select(l =>
                    $"; {id} left long: {PlankWords.Small(l.LeastMm, unit)} to {PlankWords.Small(l.MostMm, unit, RoundTo.Up)}"
                );

        return string.Concat(
            cut.Ends.Select(e => (PieceId?)e)
                .Append(cut.EndOf)
                .SelectMany(e => Ends(e, true))
                .Concat(Ends(cut.BeginOf, false))
        );
    }

    /// <summary>the saw is set 5 times; for nothing where nothing is sawn across.</summary>
    public static string Settings(BoardCutList list) =>
        list.Settings == 0 ? ""
        : list.Settings == 1 ? "the saw is set once; "
        : $"the saw is set {list.Settings} times; ";

    /// <summary>On which side of its line a rip takes its kerf, or what takes an empty end off.</summary>
    public static string KerfSide(SawCut rip) =>
        rip.Kind == CutKind.EndOff
            ? "kerf to the " + (rip.IsNearEnd ? "left" : "right")
            : (rip.IsPlaned ? "plane" : "kerf") + (rip.KerfMm < 0 ? " below" : " above");

    /// <summary>Where a cut meets an edge of its lane, from the board's beginning; for a point inside the lane, how far up from its lower edge as well. Of a rip, how far up from the board's.</summary>
    public static string Place(BoardCutList list, SawCut cut, bool upper, LengthUnit unit)
    {
        Vec2 at = upper ? cut.To : cut.From;
        if (cut.Kind == CutKind.Rip)
        {
            return upper ? "" : $"{LengthText.PaperNumber(at.Y, unit)} up";
        }

        string along = LengthText.PaperNumber(at.X, unit);
        if (cut.Kind == CutKind.EndOff || (cut.Kind == CutKind.Edge && cut.IsPlaned))
        {
            return along;
        }

        SawnLane lane = list.Lanes[cut.Lane!.Value];
        double edge = upper ? lane.HighMm : lane.LowMm;
        return cut.Kind != CutKind.Edge && Math.Abs(at.Y - edge) <= OnEdgeMm
            ? along
            : $"{along}, {LengthText.PaperNumber(at.Y - lane.LowMm, unit)} up";
    }

    /// <summary>45.5° to the right; square.</summary>
    public static string Lean(SawCut cut) =>
        cut.Kind is CutKind.Rip or CutKind.Edge ? ""
        : Math.Abs(cut.DegreesFromSquare) < SquareDegrees ? "square"
        : $"{AngleText.ForPaper(Math.Abs(cut.DegreesFromSquare))} to the {(cut.DegreesFromSquare > 0 ? "right" : "left")}";

    /// <summary>The saw's setting: 45.5 right; square.</summary>
    public static string Setting(SawCut cut) =>
        cut.Setting == 0
            ? "square"
            : $"{NumberText.Trimmed(Math.Abs(cut.Setting), 1)} {(cut.Setting > 0 ? "right" : "left")}";

    /// <summary>12.35 m²; 132.9 sq ft.</summary>
    public static string Area(double mm2, LengthUnit unit) =>
        LengthUnits.IsMetric(unit)
            ? $"{NumberText.Trimmed(mm2 / 1e6, 2)} m²"
            : $"{NumberText.Trimmed(mm2 / SquareFootMm2, 1)} sq ft";

    private const double SquareFootMm2 = LengthUnits.MmPerFoot * LengthUnits.MmPerFoot;

    private static double AreaStepMm2(LengthUnit unit) =>
        LengthUnits.IsMetric(unit) ? 0.01 * 1e6 : 0.1 * SquareFootMm2;

    /// <summary>A whole and all its parts, rounded so that the parts as they are written make up the whole: what is cut off is given to those that lose most by it (largest remainders, Hamilton 1792, from memory).</summary>
    public static ImmutableArray<string> AreasOf(
        double wholeMm2,
        ImmutableArray<double> partsMm2,
        LengthUnit unit
    )
    {
        double step = AreaStepMm2(unit);
        double[] exact = [.. partsMm2.Select(p => p / step)];
        double[] steps = [.. exact.Select(Math.Floor)];
        int lacking = (int)(
            Math.Round(wholeMm2 / step, MidpointRounding.AwayFromZero) - steps.Sum()
        );
        foreach (
            int i in Enumerable
                .Range(0, steps.Length)
                .OrderByDescending(i => exact[i] - steps[i])
                .Take(lacking)
        )
        {
            steps[i]++;
        }

        return [.. steps.Select(s => Area(s * step, unit))];
    }
}
