using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Nesting.Shapes;
using PlankFit.Planking.Stock;

namespace PlankFit.Nesting.Model;

/// <summary>Things to lay from pieces to saw.</summary>
internal static class ItemsOf
{
    /// <summary>Pieces of one shape, which the same stock serves and which may lie alike, are copies of one item.</summary>
    /// <param name="sorts">The sorts of stock that serve a piece.</param>
    public static ImmutableArray<NestItem> Pieces(
        IEnumerable<SawPiece> pieces,
        Func<SawPiece, ImmutableArray<int>> sorts
    ) =>
        [
            .. pieces
                .GroupBy(p => new ShapeKey(p, sorts(p)))
                .Select(
                    (same, i) =>
                        new NestItem(
                            [.. same],
                            [i],
                            Poses(same.First()),
                            same.Key.Sorts,
                            same.First().AreaMm2
                        )
                        {
                            LeastAreaMm2 = same.First().LeastAreaMm2,
                        }
                ),
        ];

    private static ImmutableArray<ItemPose> Poses(SawPiece piece)
    {
        ImmutableArray<ItemPose>.Builder poses = ImmutableArray.CreateBuilder<ItemPose>();
        foreach (bool faceDown in piece.MayTurnFace ? new[] { false, true } : [false])
        {
            foreach (bool turned in piece.MayTurnEnd ? new[] { false, true } : [false])
            {
                ItemPose pose = Pose([piece], [new(turned, faceDown, 0, default)], turned ? 0 : 1);
                // A rectangle is the same whichever way it lies, and is looked at once, but where one of its ends may be sawn otherwise.
                if (Slack(piece).Any() || !poses.Any(p => IsLike(piece, p, pose)))
                {
                    poses.Add(pose);
                }
            }
        }

        return poses.ToImmutable();
    }

    /// <summary>Corners of one outline lie on those of the other.</summary>
    private static bool IsLike(SawPiece piece, ItemPose one, ItemPose other)
    {
        const double SameMm = 1e-9;
        List<Vec2> left = [.. other.Laid[0].Of(piece, default).Outline];
        foreach (Vec2 p in one.Laid[0].Of(piece, default).Outline)
        {
            int at = left.FindIndex(q => (q - p).Norm <= SameMm);
            if (at < 0)
            {
                return false;
            }

            left.RemoveAt(at);
        }

        return true;
    }

    /// <summary>The pieces moved together so that their least x and y are at nought.</summary>
    /// <param name="laid">How each lies before that.</param>
    public static ItemPose Pose(
        IReadOnlyList<SawPiece> pieces,
        IReadOnlyList<PiecePose> laid,
        int rightEnd
    )
    {
        ImmutableArray<Vec2>[] outlines =
        [
            .. pieces.Select((p, i) => laid[i].Of(p, default).Outline),
        ];
        var corner = new Vec2(
            outlines.Min(o => o.Min(p => p.X)),
            outlines.Min(o => o.Min(p => p.Y))
        );
        var shape = RowShape.Of(outlines);
        return new(
            shape,
            rightEnd,
            shape.LengthMm / 2,
            [.. laid.Select(l => l with { Shift = l.Shift - corner })]
        );
    }

    /// <summary>The same, all of it end for end.</summary>
    public static ItemPose HalfTurn(IReadOnlyList<SawPiece> pieces, ItemPose pose) =>
        Pose(
            pieces,
            [
                .. pose.Laid.Select(l =>
                    l with
                    {
                        Turned = !l.Turned,
                        Shift = new(-l.Shift.X, -l.Shift.Y),
                    }
                ),
            ],
            0
        );

    /// <summary>What ends left long may be turned by; nothing of those that keep to what they are left long by.</summary>
    private static IEnumerable<(Vec2 Outward, double FromMm, double LeastMm, double ByMm)> Slack(
        SawPiece piece
    ) =>
        piece
            .LongEnds.Where(e => e.LeastMm < e.ByMm)
            .Select(e => (e.Outward, e.Net.Max(e.Outward.Dot), e.LeastMm, e.ByMm));

    /// <summary>What makes two pieces copies of one another.</summary>
    private sealed class ShapeKey(SawPiece piece, ImmutableArray<int> sorts) : IEquatable<ShapeKey>
    {
        private readonly SawPiece piece = piece;

        public ImmutableArray<int> Sorts { get; } = sorts;

        public bool Equals(ShapeKey? other) =>
            ReferenceEquals(this, other)
            || (
                other is not null
                // A piece with a twin is like no other: its twin is to lie beside it.
                && piece.Twin is null
                && other.piece.Twin is null
                && piece.MayTurnEnd == other.piece.MayTurnEnd
                && piece.MayTurnFace == other.piece.MayTurnFace
                && Sorts.AsSpan().SequenceEqual(other.Sorts.AsSpan())
                && piece.Outline.AsSpan().SequenceEqual(other.piece.Outline.AsSpan())
                && Slack(piece).SequenceEqual(Slack(other.piece))
            );

        public override bool Equals(object? obj) => Equals(obj as ShapeKey);

        public override int GetHashCode() =>
            HashCode.Combine(
                piece.Outline.Length,
                piece.Outline[0],
                piece.Outline[^1],
                Sorts.Length
            );
    }
}
