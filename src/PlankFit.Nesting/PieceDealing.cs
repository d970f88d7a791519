using System.Collections.Immutable;
using PlankFit.Nesting.Model;
using PlankFit.Planking.Stock;

namespace PlankFit.Nesting;

/// <summary>Hands out the pieces of items one copy after another.</summary>
internal sealed class PieceDealing(ImmutableArray<NestItem> items)
{
    private readonly int[] dealt = new int[items.Length];

    public SawPiece Next(int item) => items[item].Copies[dealt[item]++];

    /// <summary>What no row asked for.</summary>
    public ImmutableArray<SawPiece> Left() =>
        [.. items.SelectMany((item, i) => item.Copies.Skip(dealt[i]))];
}
