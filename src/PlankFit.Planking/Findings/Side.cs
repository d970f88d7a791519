namespace PlankFit.Planking.Findings;

public enum Side
{
    Starboard,
    Port,
}
