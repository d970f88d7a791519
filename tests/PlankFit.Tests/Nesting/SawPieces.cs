using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Stock;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Nesting;

/// <summary>Pieces and boards for tests, plain but for what a test says.</summary>
internal static class SawPieces
{
    public static SawPiece Of(string id, params ReadOnlySpan<Vec2> outline) =>
        new(
            Named.Piece(id),
            [.. outline],
            9,
            new(null, null),
            new(EndForEnd: true, FaceForFace: false),
            null,
            IsMaster: false
        );

    public static SawPiece Rectangle(string id, double length, double width) =>
        Of(id, new(0, 0), new(length, 0), new(length, width), new(0, width));

    /// <summary>Both ends at one angle to its edges.</summary>
    public static SawPiece Parallelogram(string id, double edge, double width, double degrees)
    {
        double lean = width / Math.Tan(degrees * Math.PI / 180);
        return Of(id, new(0, 0), new(edge, 0), new(edge + lean, width), new(lean, width));
    }

    /// <summary>Planks by chance, S1-01 and on, every end at an angle of its own.</summary>
    /// <param name="degrees">Of an end to its edges: at least, and how much more at the most.</param>
    /// <param name="lengthMm">Of an edge, likewise.</param>
    public static ImmutableArray<SawPiece> Slanting(
        int seed,
        int count,
        double widthMm,
        (double Least, double More) degrees,
        (double Least, double More) lengthMm
    )
    {
        var chance = new Random(seed);
        double Drawn((double Least, double More) of) => of.Least + (of.More * chance.NextDouble());
        double Lean() => widthMm / Math.Tan(Drawn(degrees) * Math.PI / 180);
        return
        [
            .. Enumerable
                .Range(1, count)
                .Select(i =>
                {
                    double length = Drawn(lengthMm),
                        a = Lean(),
                        b = Lean();
                    return Of(
                        FormattableString.Invariant($"S1-{i:00}"),
                        new(0, 0),
                        new(length, 0),
                        new(length + b, widthMm),
                        new(a, widthMm)
                    );
                }),
        ];
    }

    /// <summary>The ends lean against each other alike.</summary>
    public static SawPiece Trapezoid(string id, double longer, double shorter, double width) =>
        Of(
            id,
            new(0, 0),
            new(longer, 0),
            new((longer + shorter) / 2, width),
            new((longer - shorter) / 2, width)
        );

    public static StockBoard Board(string id, double length, double width) =>
        new(
            id,
            StockKind.Board,
            new(length, width, 9),
            new(null, null),
            new(Price: null, Count: 1, OnHand: true),
            new(0, 0, []),
            new("stock.csv", 2)
        );

    public static NestSpec Spec(params ReadOnlySpan<StockBoard> boards) =>
        NestSpec.Usual with
        {
            Boards = [.. boards],
            Rounds = 2,
        };
}
