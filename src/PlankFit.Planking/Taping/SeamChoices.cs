using PlankFit.Planking.Laying;

namespace PlankFit.Planking.Taping;

/// <summary>What a row of planks was laid by: how many there are, which are tapered, and where the master stands.</summary>
internal static class SeamChoices
{
    /// <summary>A master that is moved by less is where it was, mm.</summary>
    private const double ShiftMm = 0.5;

    /// <summary>Whether the two rows have the same planks, a little longer or shorter: a plank's name is then that of its fellow.</summary>
    public static bool AreSame(LaidLayer one, LaidLayer other) =>
        one.Row.Planks == other.Row.Planks
        && one.Row.FirstNumber == other.Row.FirstNumber
        && one.Row.Tapered.SetEquals(other.Row.Tapered)
        // A row's own shift is counted from what it was given: the whole of it is the plan's.
        && Math.Abs(one.Plan.MasterShiftMm - other.Plan.MasterShiftMm) < ShiftMm;
}
