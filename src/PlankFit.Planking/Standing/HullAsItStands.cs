namespace PlankFit.Planking;

/// <summary>The bottom's surface on one side, in the starboard frame.</summary>
internal static class HullAsItStands
{
    /// <summary>Whether anything was measured for which the two sides can no longer be each other's mirror images.</summary>
    public static bool SidesDiffer(Job job) => !job.Standing.KeelHalfWidths.IsEmpty;

    public static HullSurface Of(Job job, Side side) => HullLoft.Build(job.Offsets, job.Hull);
}
