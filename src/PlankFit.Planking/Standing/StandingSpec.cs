namespace PlankFit.Planking;

/// <summary>What was measured on the hull as it stands, and what is cut and fitted already.</summary>
public sealed record StandingSpec
{
    public static readonly StandingSpec None = new();
}
