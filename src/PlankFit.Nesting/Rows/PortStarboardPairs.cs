using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Nesting.Effort;
using PlankFit.Nesting.Model;
using PlankFit.Planking.Stock;

namespace PlankFit.Nesting.Rows;

/// <summary>
/// Pieces that are to come from the same board as their twins of the other side: each pair is laid as one block, and two pairs together as another, since port and
/// starboard lean against each other and a block of four has that loss once.
/// </summary>
internal static class PortStarboardPairs
{
    /// <summary>With the pairs of so many pieces next in order a pair makes blocks of four.</summary>
    private const int Neighbours = 3;

    /// <param name="ends">Of single pieces.</param>
    /// <param name="instead">By single piece, the block of its pair that is laid in its place; -1 where it is laid by itself.</param>
    /// <param name="apart">Pieces that asked for it and are longer together than any board of theirs is clear.</param>
    public static ImmutableArray<NestItem> Of(
        EndTable ends,
        ImmutableArray<BoardType> boards,
        NestSpec spec,
        Patience patience,
        out ImmutableArray<int> instead,
        out ImmutableArray<SawPiece> apart
    )
    {
        int singles = ends.Items.Length;
        var byId = Enumerable
            .Range(0, singles)
            .SelectMany(i => ends.Items[i].Copies.Select(c => (c.Id, i)))
            .ToDictionary(x => x.Id, x => x.i);
        int[] place = [.. Enumerable.Repeat(-1, singles)];
        ImmutableArray<NestItem>.Builder blocks = ImmutableArray.CreateBuilder<NestItem>();
        var pairs = new List<(int A, int B)>();
        ImmutableArray<SawPiece>.Builder none = ImmutableArray.CreateBuilder<SawPiece>();
        for (int i = 0; i < singles; i++)
        {
            SawPiece piece = ends.Items[i].Copies[0];
            if (piece.Twin is not { } other || !byId.TryGetValue(other, out int twin) || twin < i)
            {
                continue;
            }

            if (Block(ends, boards, spec, [i, twin]) is { } block)
            {
                place[i] = place[twin] = singles + blocks.Count;
                blocks.Add(block);
                pairs.Add((i, twin));
                // In a wide board they lie abreast without the loss of two ends that lean against each other.
                if (Side(ends, boards, spec, i, twin) is { } beside)
                {
                    blocks.Add(beside);
                }
            }
            else
            {
                none.AddRange(piece, ends.Items[twin].Copies[0]);
            }
        }

        for (int p = 0; p < pairs.Count; p++)
        {
            for (int q = p + 1; q < Math.Min(pairs.Count, p + 1 + Neighbours); q++)
            {
                if (
                    !patience.IsOver
                    && Block(ends, boards, spec, [pairs[p].A, pairs[q].A, pairs[q].B, pairs[p].B])
                        is { } block
                )
                {
                    blocks.Add(block);
                }
            }
        }

        instead = [.. place, .. blocks.Select(_ => -1)];
        apart = none.ToImmutable();
        return blocks.ToImmutable();
    }

    /// <summary>The shortest row of them as one thing, or a pair abreast where it is too long for every board; null where no board is clear for it.</summary>
    private static NestItem? Block(
        EndTable ends,
        ImmutableArray<BoardType> boards,
        NestSpec spec,
        int[] parts
    )
    {
        Row row = RowOrder.Best(ends, parts);
        SawPiece[] pieces = [.. row.Items.Select(i => ends.Items[i].Copies[0])];
        ItemPose pose = ItemsOf.Pose(
            pieces,
            [
                .. row.Items.Select(
                    (item, i) =>
                    {
                        PiecePose laid = ends.Items[item].Poses[row.Poses[i]].Laid[0];
                        return laid with { Shift = laid.Shift + new Vec2(row.FromMm[i], 0) };
                    }
                ),
            ],
            1
        );
        return Item(ends, boards, spec, row.Items, pieces, pose)
            ?? (parts.Length == 2 ? Side(ends, boards, spec, parts[0], parts[1]) : null);
    }

    /// <summary>A pair abreast, a kerf between; null where no board is wide enough.</summary>
    private static NestItem? Side(
        EndTable ends,
        ImmutableArray<BoardType> boards,
        NestSpec spec,
        int a,
        int b
    )
    {
        SawPiece[] pieces = [ends.Items[a].Copies[0], ends.Items[b].Copies[0]];
        return Item(
            ends,
            boards,
            spec,
            [a, b],
            pieces,
            HeadToTailPairs.Abreast(pieces[0], pieces[1], spec.KerfMm)
        );
    }

    private static NestItem? Item(
        EndTable ends,
        ImmutableArray<BoardType> boards,
        NestSpec spec,
        ImmutableArray<int> parts,
        SawPiece[] pieces,
        ItemPose pose
    )
    {
        ImmutableArray<int> sorts =
        [
            .. parts
                .Select(p => (IEnumerable<int>)ends.Items[p].Sorts)
                .Aggregate((x, y) => x.Intersect(y)),
        ];
        if (!Fits(pose, boards, sorts, spec))
        {
            return null;
        }

        var poses = ImmutableArray.Create(pose);
        if (pieces.All(p => p.MayTurnEnd))
        {
            poses = poses.Add(ItemsOf.HalfTurn(pieces, pose));
        }

        return new([], parts, poses, sorts, pieces.Sum(p => p.AreaMm2));
    }

    private static bool Fits(
        ItemPose pose,
        ImmutableArray<BoardType> boards,
        ImmutableArray<int> sorts,
        NestSpec spec
    ) =>
        boards.Any(b =>
            sorts.Contains(b.Sort)
            && b.Region.WidthMm + spec.ProudMm >= pose.Shape.HeightMm
            && b.Region.Clear(b.Region.LeastV, b.Region.LeastV + pose.Shape.HeightMm, spec.KerfMm)
                .Any(s => s.LengthMm >= pose.Shape.LengthMm)
        );
}
