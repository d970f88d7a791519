using System.Collections.Immutable;

namespace PlankFit.Nesting.Rows;

/// <summary>What things, boards and strips are worth at the cheapest mix.</summary>
/// <param name="Strips">By kind and length, the longest first.</param>
internal sealed record MasterPrices(
    double Value,
    double[] Items,
    double[] Boards,
    ImmutableArray<ImmutableArray<double>> Strips
)
{
    /// <summary>Strips for this part of their price: rows that are almost worth them are then worth it.</summary>
    public MasterPrices Lowered(double part) =>
        this with
        {
            Strips = [.. Strips.Select(k => k.Select(s => part * s).ToImmutableArray())],
        };

    /// <summary>No price more than so many times its like in the centre, nor less than the same part of it: the mix of a few rows says little of what things are worth.</summary>
    public MasterPrices Within(MasterPrices centre, double times)
    {
        double Near(double a, double c) => c <= 0 ? a : Math.Clamp(a, c / times, c * times);
        return new(
            Value,
            [.. Items.Zip(centre.Items, Near)],
            Boards,
            [.. Strips.Zip(centre.Strips, (a, b) => a.Zip(b, Near).ToImmutableArray())]
        );
    }

    /// <summary>Prices to begin with: everything by the room that it takes, at what room costs in the cheapest board.</summary>
    public static MasterPrices ByArea(NestProblem problem, Share share)
    {
        double Room(int b) =>
            problem.Lanes[b].Best((c, length) => problem.Classes[c].HeightMm * length).Value;
        double rate = Enumerable
            .Range(0, problem.Boards.Length)
            .Where(b => share.Boards[b] > 0)
            .Select(b => (problem.Boards[b].Cost, Room: Room(b)))
            .Where(b => b.Room > 0)
            .Select(b => b.Cost / b.Room)
            .DefaultIfEmpty(0)
            .Min();
        return new(
            0,
            [.. problem.Items.Select((item, i) => rate * item.HeightMm * problem.Ends.SizeMm(i))],
            [.. problem.Boards.Select(_ => 0.0)],
            [
                .. Enumerable
                    .Range(0, problem.Kinds)
                    .Select(k =>
                        problem
                            .StripLengths(k)
                            .Select(l => rate * problem.Classes[problem.ClassOf(k)].HeightMm * l)
                            .ToImmutableArray()
                    ),
            ]
        );
    }

    /// <summary>Part of the way from these prices to others.</summary>
    public MasterPrices Towards(MasterPrices other, double part)
    {
        double Between(double a, double b) => a + (part * (b - a));
        return new(
            Value,
            [.. Items.Zip(other.Items, Between)],
            [.. Boards.Zip(other.Boards, Between)],
            [.. Strips.Zip(other.Strips, (a, b) => a.Zip(b, Between).ToImmutableArray())]
        );
    }
}
