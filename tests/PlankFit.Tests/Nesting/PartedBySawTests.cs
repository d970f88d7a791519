using System.Collections.Immutable;
using CsCheck;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Stock;

namespace PlankFit.Tests.Nesting;

/// <summary>Pieces so short that what lies on both sides of them meets over them: a saw still parts them all, cut by cut.</summary>
public sealed class PartedBySawTests
{
    /// <summary>
    /// Two slants of 45 degrees over a triangle of 300 by 150: corner to corner a kerf apart, either slant carried on would take 0.88 mm off the other's
    /// corner, 3 (1 - cos 45).
    /// </summary>
    [Theory]
    [InlineData(150)]
    [InlineData(149)]
    [InlineData(120)]
    [InlineData(60)]
    public void TwoSlantsOverATriangle(double high)
    {
        ImmutableArray<SawPiece> pieces =
        [
            Slant("S1-01"),
            SawPieces.Of("S1-02", new(0, 0), new(2 * high, 0), new(high, high)) with
            {
                MayTurnEnd = false,
            },
            Slant("S1-03") with
            {
                Outline = [new(150, 0), new(900, 0), new(900, 150), new(0, 150)],
            },
        ];
        NestPlan plan = Planned.Lawful(
            SawPieces.Spec(SawPieces.Board("B", 2100, 150)) with
            {
                Rounds = 5,
            },
            pieces
        );
        Assert.Empty(plan.Unplaced);
    }

    /// <summary>Its end leans over what follows.</summary>
    private static SawPiece Slant(string id) =>
        SawPieces.Of(id, new(0, 0), new(750, 0), new(900, 150), new(0, 150)) with
        {
            MayTurnEnd = false,
        };

    /// <summary>Short pieces and triangles by chance between slants.</summary>
    [Fact]
    public void ShortPiecesByChance()
    {
        Gen<Vec2[]> shape = Gen.Select(
                Gen.Double[0, 400],
                Gen.Double[40, 150],
                Gen.Double[-150, 150],
                Gen.Double[-150, 150],
                Gen.Double[0, 1]
            )
            .Select(
                (length, high, a, b, round) =>
                {
                    // Never narrower than nothing: where the ends meet below the upper edge it is a triangle.
                    double low = 20 + length,
                        top = Math.Max(0, low + b - a);
                    return (Vec2[])[new(0, 0), new(low, 0), .. Top(a, a + top, high, round, low)];
                }
            );
        Gen.Select(shape.Array[2, 7], Gen.Double[0.5, 6], Gen.Bool)
            .Sample(
                (shapes, kerf, turn) =>
                {
                    ImmutableArray<SawPiece> pieces =
                    [
                        .. shapes.Select(
                            (s, i) => SawPieces.Of($"S1-0{i + 1}", s) with { MayTurnEnd = turn }
                        ),
                    ];
                    NestPlan plan = Planned.Of(
                        SawPieces.Spec(SawPieces.Board("B", 1500, 150) with { Count = 9 }) with
                        {
                            KerfMm = kerf,
                            Rounds = 1,
                        },
                        pieces
                    );
                    Assert.Empty(CutLaws.Broken(plan, pieces));
                    Assert.Empty(plan.Unplaced);
                },
                iter: 60,
                threads: 2
            );
    }

    /// <summary>An upper edge that falls by a tenth at the most, or a point.</summary>
    private static IEnumerable<Vec2> Top(
        double from,
        double to,
        double high,
        double fall,
        double low
    ) =>
        to - from < 2 ? [new(from, high)]
        : to - from < Math.Abs(to - low) ? [new(to, high), new(from, high)]
        : [new(to, high), new(from, high * (1 - (0.1 * fall)))];
}
