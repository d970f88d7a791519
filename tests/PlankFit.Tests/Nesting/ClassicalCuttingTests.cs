using PlankFit.Tests.Support;

namespace PlankFit.Tests.Nesting;

/// <summary>Cutting stock with known optima, through the planner of boards.</summary>
public sealed class ClassicalCuttingTests
{
    /// <summary>Chvátal's roll of 100, as the GAMS model library has it: LP 452.25, and 453.</summary>
    [Fact]
    public void ARollOf100() => Optimum(453, 100, (45, 97), (36, 610), (31, 395), (14, 211));

    /// <summary>The roll of 110 of the AMPL book's cut.dat (Fourer, Gay, Kernighan): LP 46.25, and 47.</summary>
    [Fact]
    public void ARollOf110() => Optimum(47, 110, (20, 48), (45, 35), (50, 24), (55, 10), (75, 8));

    /// <summary>The encyclopaedia's roll of 5600 (the orders from memory; the optimum worked out from them by others): LP 72.9167, and 73.</summary>
    [Fact]
    public void ARollOf5600() =>
        Optimum(
            73,
            5600,
            (1380, 22),
            (1520, 25),
            (1560, 12),
            (1710, 14),
            (1820, 18),
            (1880, 18),
            (1930, 20),
            (2000, 10),
            (2050, 12),
            (2100, 14),
            (2140, 16),
            (2150, 18),
            (2200, 20)
        );

    /// <summary>Falkenauer 1996 (u and t) and Scholl, Klein and Jürgens 1997 (N), read with their optima from a collection; first-fit decreasing needs 49, 23, 23, 21 and 20 in the first, second, third, sixth and last.</summary>
    [Theory]
    [InlineData("Falkenauer_u120_00.txt", 48)]
    [InlineData("Falkenauer_t60_00.txt", 20)]
    [InlineData("Falkenauer_t60_01.txt", 20)]
    [InlineData("N1C1W1_A.txt", 25)]
    [InlineData("N1C1W1_B.txt", 31)]
    [InlineData("N1C1W1_C.txt", 20)]
    [InlineData("N1C1W1_D.txt", 28)]
    [InlineData("N1C1W1_E.txt", 26)]
    [InlineData("N1W1B1R0.txt", 18)]
    public void Published(string file, int optimum)
    {
        double[] n = PublishedCutting.Numbers("1d", file);
        Optimum(optimum, (int)n[1], [.. n.Skip(2).Take((int)n[0]).Select(l => ((int)l, 1))]);
    }

    private static void Optimum(int boards, int stock, params (int Length, int Count)[] items)
    {
        (int used, double atLeast) = ClassicalCases.Cut(stock, items);
        Assert.Equal(boards, used);
        // A bound may fall short of the optimum; it is never above it.
        Assert.InRange(atLeast, boards - 1 + 1e-6, boards + 1e-6);
    }
}
