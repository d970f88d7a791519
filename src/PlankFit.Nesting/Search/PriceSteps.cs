using PlankFit.Nesting.Rows;

namespace PlankFit.Nesting.Search;

/// <summary>
/// Prices to look for rows by: some way from the best known ones towards those of the last mix (Wentges 1997, from memory), which by themselves swing for hundreds of
/// rounds. The way grows while bounds get better by it, and shrinks where they do not.
/// </summary>
internal sealed class PriceSteps(MasterPrices begin)
{
    private const double First = 0.2;
    private const double Longest = 0.8;
    private const double Shortest = 0.1;
    private const double Longer = 1.3;
    private const double Shorter = 0.7;

    /// <summary>Of no price more is believed at once than so many times the best known, nor less than that part of it.</summary>
    private const double Times = 2;

    private double step = First;

    /// <summary>At which the best bound was found.</summary>
    public MasterPrices Centre { get; private set; } = begin;

    /// <param name="real">Of the mix.</param>
    public MasterPrices Next(MasterPrices real) => Centre.Towards(real.Within(Centre, Times), step);

    /// <param name="isBetter">They gave the best bound so far.</param>
    public void Tried(MasterPrices prices, bool isBetter)
    {
        if (isBetter)
        {
            Centre = prices;
        }

        step = isBetter ? Math.Min(Longest, step * Longer) : Math.Max(Shortest, step * Shorter);
    }
}
