namespace PlankFit.Planking;

/// <summary>What the job says of the edges of the bottom and of what it stands on.</summary>
public sealed record SettingUpSpec
{
    public static readonly SettingUpSpec Default = new();
}
