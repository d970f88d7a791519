using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;

namespace PlankFit.Planking.Stock;

/// <summary>What a lane is parted into so far.</summary>
internal sealed record LanePart(ImmutableArray<LanePiece> Pieces, double FromMm, double ToMm)
{
    /// <summary>The piece whose end it makes lies here, and none is in its way.</summary>
    public bool Lets(LaneEnd end) =>
        Pieces.Any(p => p.Id == (end.Cut.EndOf ?? end.Cut.BeginOf)) && end.IsClear(Pieces);

    public double Shorter(double at) => Math.Min(at - FromMm, ToMm - at);

    /// <summary>The same, and others lie on its other side.</summary>
    public bool IsPartedBy(LaneEnd edge) =>
        Lets(edge) && Pieces.Any(p => edge.Beyond.Contains(p.Id));

    public IEnumerable<LaneEnd> Partings(
        Func<ImmutableArray<LanePiece>, ImmutableArray<LanePiece>, bool, LaneEnd?> between,
        bool mayRip
    )
    {
        // Where ends reach far past each other it is not plain which of two comes first.
        ImmutableArray<LanePiece>[] orders =
        [
            Sorted(p => p.Min(v => v.X)),
            Sorted(p => p.Max(v => v.X)),
            Sorted(p => p.Min(v => v.X) + p.Max(v => v.X)),
            .. mayRip
                ? [Sorted(p => p.Min(v => v.Y) + p.Max(v => v.Y))]
                : Array.Empty<ImmutableArray<LanePiece>>(),
        ];
        foreach (ImmutableArray<LanePiece> sorted in orders)
        {
            bool any = false;
            for (int i = 1; i < sorted.Length; i++)
            {
                if (between(sorted[..i], sorted[i..], mayRip) is { } end)
                {
                    any = true;
                    yield return end;
                }
            }

            if (any)
            {
                yield break;
            }
        }
    }

    private ImmutableArray<LanePiece> Sorted(Func<ImmutableArray<Vec2>, double> by) =>
        [.. Pieces.OrderBy(p => by(p.Hull))];

    public IEnumerable<LanePart> PartedBy(LaneEnd end)
    {
        double at = end.Across.MiddleMm;
        ImmutableArray<LanePiece> behind = [.. Pieces.Where(p => end.Behind.Contains(p.Id))],
            beyond = [.. Pieces.Where(p => end.Beyond.Contains(p.Id))];
        if (end.Cut.Kind == CutKind.Edge)
        {
            return [new(behind, FromMm, ToMm), new(beyond, FromMm, ToMm)];
        }

        // A piece lies before the cut that ends it, and after the one that begins it.
        (ImmutableArray<LanePiece> before, ImmutableArray<LanePiece> after) = end.Cut.EndOf
            is not null
            ? (behind, beyond)
            : (beyond, behind);
        return [new(before, FromMm, at), new(after, at, ToMm)];
    }
}
