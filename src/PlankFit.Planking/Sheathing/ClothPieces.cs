using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Findings;

namespace PlankFit.Planking.Sheathing;

/// <summary>The courses of a layer as pieces to cut, each by itself as it is seen from outside on its side of the boat.</summary>
internal static class ClothPieces
{
    /// <summary>A shorter stretch of a dart is none.</summary>
    private const double LeastMm = 0.1;

    public static ImmutableArray<ClothPiece> Of(SheathedLayer layer) =>
        [
            .. new[] { Side.Starboard, Side.Port }
                .OrderBy(s => s != layer.Spec.SideFirst)
                .SelectMany(side => OfSide(layer, side)),
        ];

    private static IEnumerable<ClothPiece> OfSide(SheathedLayer layer, Side side)
    {
        SheathedSide on = layer.Of(side);
        ImmutableArray<CoursePart> parts = on.Courses.Parts;
        for (int i = 0; i < parts.Length; i++)
        {
            IReadOnlyList<Vec2> trim =
                PlanarShapes.Common(on.Trim, parts[i].Outline, 0).MaxBy(FlatPolygon.Area) ?? [];
            // p grows aft and q outboard: from outside that is how port is seen, and starboard is its mirror image.
            Func<Vec2, Vec2> seen = side == Side.Port ? p => p : p => new(-p.X, p.Y);
            // Across, a quarter turn brings the roll's length back to the right.
            Func<Vec2, Vec2> turned = on.Courses.Along ? p => p : p => new(p.Y, -p.X);
            Vec2 At(Vec2 p) => turned(seen(p));
            Vec2[] outline = [.. parts[i].Outline.Select(At)],
                trimmed = [.. trim.Select(At)];
            Vec2 low = new(outline.Min(p => p.X), outline.Min(p => p.Y));
            if (side == Side.Starboard)
            {
                Array.Reverse(outline);
                Array.Reverse(trimmed);
            }

            yield return new(
                $"{(side == Side.Starboard ? "S" : "P")}-C{layer.Number}{(parts.Length == 1 ? "" : Letter(i))}",
                side,
                layer.Number,
                layer.Cloth.Name,
                [.. outline.Select(p => p - low)],
                [.. trimmed.Select(p => p - low)],
                At(new(-1, 0))
            )
            {
                Cross = At(default) - low,
                FirstAlongRoll = on.Courses.Along,
                Face = layer.Spec.Face,
                Darts =
                [
                    .. Darts(on, parts[i])
                        .Select(d => d with { Tip = At(d.Tip) - low, Mouth = At(d.Mouth) - low }),
                ],
            };
        }
    }

    /// <summary>What of each lies on a course: a dart is cut through all that it crosses from its tip to the edge of the whole cloth, and in a lap through both.</summary>
    private static IEnumerable<ClothDart> Darts(SheathedSide on, CoursePart part) =>
        on.Darts.Darts.SelectMany(d => Stretches(part.Outline, d));

    internal static IEnumerable<ClothDart> Stretches(IReadOnlyList<Vec2> outline, ClothDart dart)
    {
        Vec2 along = (dart.Mouth - dart.Tip).Unit();
        List<double> at = [0];
        // From edge to edge, the first not the tip itself.
        for (
            Vec2? edge = ClothDarts.Exit(outline, dart.Tip, along);
            edge is { } e && (e - dart.Tip).Dot(along) < dart.LengthMm - LeastMm;
            edge = ClothDarts.Exit(outline, e, along)
        )
        {
            at.Add((e - dart.Tip).Dot(along));
        }

        at.Add(dart.LengthMm);
        for (int i = 0; i + 1 < at.Count; i++)
        {
            if (
                at[i + 1] - at[i] > LeastMm
                && FlatPolygon.Holds(outline, dart.Tip + ((at[i] + at[i + 1]) / 2 * along))
            )
            {
                yield return dart with
                {
                    Tip = dart.Tip + (at[i] * along),
                    Mouth = dart.Tip + (at[i + 1] * along),
                    FromTipMm = at[i],
                };
            }
        }
    }

    /// <summary>a to z, then aa, ab.</summary>
    private static string Letter(int i) =>
        i < 26 ? ((char)('a' + i)).ToString() : Letter((i / 26) - 1) + (char)('a' + (i % 26));
}
