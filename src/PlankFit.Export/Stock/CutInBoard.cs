using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Stock;
using PlankFit.Planking.Units;

namespace PlankFit.Export.Stock;

/// <summary>A cut where it is made. Lengths along the board as on its cut sheet; "up" from the board's lower edge for a rip, from the lane's for all others.</summary>
internal sealed record CutInBoard(BoardCutList List, SawCut Cut)
{
    /// <summary>Null where a cut runs along the grain.</summary>
    public double? Degrees =>
        Cut.Kind is CutKind.Rip or CutKind.Edge ? null : Cut.DegreesFromSquare;

    public static IEnumerable<CutInBoard> All(NestPlan nest) =>
        nest
            .Boards.Select(b => BoardCuts.Of(b, nest.Spec))
            .SelectMany(l => l.Cuts.Select(c => new CutInBoard(l, c)));

    public double Up(Vec2 at) => at.Y - (Cut.Lane is { } lane ? List.Lanes[lane].LowMm : 0);

    public string Place(bool upper, LengthUnit unit) => BoardCutWords.Place(List, Cut, upper, unit);
}
