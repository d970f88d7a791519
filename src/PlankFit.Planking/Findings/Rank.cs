namespace PlankFit.Planking.Findings;

/// <summary>What it costs a builder who saws without having read a finding; from the least to the most.</summary>
public enum Rank
{
    /// <summary>Nothing is spoiled by it.</summary>
    Know,

    /// <summary>Something is to be looked at, measured or mended first, or planks may want work or wood after.</summary>
    SawAfter,

    /// <summary>Nothing is spoiled by it, but planks have no board: wood is to be bought before they can be sawn.</summary>
    BuyFirst,

    /// <summary>What is sawn by it is firewood: the plank cannot be bent or got out of the stock, or the shape is not the hull's.</summary>
    DoNotSaw,
}
