using Microsoft.Playwright;

namespace PlankFit.Tests.Pages;

/// <summary>Debian's own browser, driven by Playwright; one for all tests of the page, which are skipped where it is not installed.</summary>
public sealed class Browser : IAsyncLifetime
{
    private const string Program = "/usr/bin/chromium";

    /// <summary>No test is about how long anything takes: this only ends one that would wait for ever.</summary>
    internal static readonly int PatienceMs = 120_000;

    private IPlaywright? playwright;
    private IBrowser? browser;

    public async ValueTask InitializeAsync()
    {
        if (!File.Exists(Program))
        {
            return;
        }

        playwright = await Playwright.CreateAsync();
        browser = await Launch(playwright);
    }

    private static Task<IBrowser> Launch(IPlaywright playwright) =>
        playwright.Chromium.LaunchAsync(
            new()
            {
                ExecutablePath = Program,
                Args =
                [
                    "--no-sandbox",
                    "--disable-quic",
                    "--no-first-run",
                    "--disable-background-networking",
                    "--disable-component-update",
                    "--disable-sync",
                    // Several browsers at once may fill what a container has of shared memory.
                    "--disable-dev-shm-usage",
                ],
            }
        );

    public async ValueTask DisposeAsync()
    {
        await (browser?.DisposeAsync() ?? ValueTask.CompletedTask);
        playwright?.Dispose();
    }

    /// <summary>A page of its own at that address, as wide as that, which has found no fault: no error of script, no refusal of the policy.</summary>
    /// <param name="solid">The browser draws the bodies itself; else it is given what stands in the place of that where there was no Node.</param>
    internal async Task<OpenPage> Open(
        Uri address,
        int width = 1600,
        int height = 900,
        bool solid = false
    )
    {
        Assert.SkipWhen(browser is null, "chromium is not installed: apt-get install chromium");
        if (!browser!.IsConnected)
        {
            // It died between two tests, of which neither is the cause.
            browser = await Launch(playwright!);
        }

        try
        {
            return await Opened(browser, address, width, height, solid);
        }
        catch (PlaywrightException) when (!browser.IsConnected)
        {
            // Before anything was seen of the page: once more, with another.
            browser = await Launch(playwright!);
            return await Opened(browser, address, width, height, solid);
        }
    }

    private static async Task<OpenPage> Opened(
        IBrowser browser,
        Uri address,
        int width,
        int height,
        bool solid
    )
    {
        IBrowserContext context = await browser.NewContextAsync(
            new()
            {
                ViewportSize = new() { Width = width, Height = height },
                HasTouch = width < 700,
                ReducedMotion = ReducedMotion.Reduce,
            }
        );
        IPage page = await context.NewPageAsync();
        if (!solid)
        {
            await page.RouteAsync(
                "**/rooms/solid/solid.js",
                route =>
                    route.ContinueAsync(
                        new()
                        {
                            Url =
                                $"{address.GetLeftPart(UriPartial.Authority)}/rooms/solid/none.js",
                        }
                    )
            );
        }

        List<string> faults = [];
        page.Console += (_, said) =>
        {
            if (said.Type == "error")
            {
                faults.Add(said.Text);
            }
        };
        page.PageError += (_, error) => faults.Add(error);
        page.SetDefaultTimeout(PatienceMs);
        await page.GotoAsync(address.ToString());
        return new(page, faults);
    }
}

/// <summary>A page that somebody has open.</summary>
/// <param name="Faults">What the browser complained of.</param>
internal sealed record OpenPage(IPage Page, List<string> Faults) : IAsyncDisposable
{
    /// <summary>The cells of the run, a plank each.</summary>
    public ILocator Cells => Page.Locator("[role=option]");

    /// <summary>Until planks are laid.</summary>
    public Task Laid() => Cells.First.WaitForAsync();

    /// <summary>How many cells the run has.</summary>
    public Task<int> Planks() => Cells.CountAsync();

    public async ValueTask DisposeAsync() => await Page.Context.CloseAsync();
}
