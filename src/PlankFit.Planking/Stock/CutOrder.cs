using System.Collections.Immutable;

namespace PlankFit.Planking;

/// <summary>
/// An order of cutting in which both sides of every cut can rest on something: each time the cut whose shorter side is the longest, so that short ends come
/// last; of two alike the nearer to the beginning. Our own rule, no source.
/// </summary>
internal static class CutOrder
{
    public static IEnumerable<SawCut> Rips(IEnumerable<SawCut> rips, double widthMm)
    {
        List<SawCut> left = [.. rips.OrderBy(r => r.From.Y)];
        List<double> made = [0, widthMm];
        while (left.Count > 0)
        {
            SawCut next = left.MaxBy(r => Shorter(made, r.From.Y))!;
            left.Remove(next);
            made.Add(next.From.Y);
            yield return next;
        }
    }

    /// <summary>
    /// A lane is parted, and its parts again. A cut can be carried across a part only where it enters no piece that lies in that part still; an end in whose
    /// way a neighbour lies waits until another cut has parted the two, and where the two are in each other's way one more cut goes between them, or along an
    /// edge where they lie abreast. What never becomes free stops where its own end does.
    /// </summary>
    /// <param name="between">The cut that parts what lies in order along a part, along the grain if it may, or null.</param>
    public static IEnumerable<SawCut> InLane(
        IEnumerable<LaneEnd> ends,
        IEnumerable<LaneEnd> edges,
        ImmutableArray<LanePiece> pieces,
        double lengthMm,
        Func<ImmutableArray<LanePiece>, ImmutableArray<LanePiece>, bool, LaneEnd?> between
    )
    {
        List<LaneEnd> left = [.. ends.OrderBy(e => e.Across.MiddleMm)],
            along = [.. edges];
        List<Part> parts = [new(pieces, 0, lengthMm)];
        var made = ImmutableArray.CreateBuilder<SawCut>();
        while (left.Count > 0 || parts.Any(p => p.Pieces.Length > 1))
        {
            (LaneEnd End, Part Part)? next =
                Best(left.SelectMany(e => parts.Where(p => p.Lets(e)).Select(p => (e, p))))
                ?? Best(parts.SelectMany(p => p.Partings(between, false)))
                ?? Best(
                    along.SelectMany(e => parts.Where(p => p.IsPartedBy(e)).Select(p => (e, p)))
                )
                ?? Best(parts.SelectMany(p => p.Partings(between, true)));
            if (next is not ({ } end, { } part))
            {
                break;
            }

            left.Remove(end);
            along.Remove(end);
            parts.Remove(part);
            parts.AddRange(part.PartedBy(end));
            made.Add(end.Made(pieces));
        }

        return [.. made, .. along.Select(e => e.Cut), .. left.Select(e => e.Cut)];
    }

    private static (LaneEnd End, Part Part)? Best(IEnumerable<(LaneEnd End, Part Part)> all)
    {
        (LaneEnd End, Part Part)[] sorted =
        [
            .. all.OrderByDescending(c => c.Part.Shorter(c.End.Across.MiddleMm)),
        ];
        return sorted.Length > 0 ? sorted[0] : null;
    }

    private static double Shorter(IReadOnlyList<double> made, double at) =>
        Math.Min(
            at - made.Where(m => m <= at).DefaultIfEmpty(at).Max(),
            made.Where(m => m >= at).DefaultIfEmpty(at).Min() - at
        );

    /// <summary>What a lane is parted into so far.</summary>
    private sealed record Part(ImmutableArray<LanePiece> Pieces, double FromMm, double ToMm)
    {
        /// <summary>The piece whose end it makes lies here, and none is in its way.</summary>
        public bool Lets(LaneEnd end) =>
            Pieces.Any(p => p.Id == (end.Cut.EndOf ?? end.Cut.BeginOf)) && end.IsClear(Pieces);

        public double Shorter(double at) => Math.Min(at - FromMm, ToMm - at);

        /// <summary>The same, and others lie on its other side.</summary>
        public bool IsPartedBy(LaneEnd edge) =>
            Lets(edge) && Pieces.Any(p => edge.Beyond.Contains(p.Id));

        public IEnumerable<(LaneEnd End, Part Part)> Partings(
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
            ];
            foreach (ImmutableArray<LanePiece> sorted in orders)
            {
                bool any = false;
                for (int i = 1; i < sorted.Length; i++)
                {
                    if (between(sorted[..i], sorted[i..], mayRip) is { } end)
                    {
                        any = true;
                        yield return (end, this);
                    }
                }

                if (any)
                {
                    yield break;
                }
            }
        }

        private ImmutableArray<LanePiece> Sorted(Func<ImmutableArray<Geometry.Vec2>, double> by) =>
            [.. Pieces.OrderBy(p => by(p.Hull))];

        public IEnumerable<Part> PartedBy(LaneEnd end)
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
}
