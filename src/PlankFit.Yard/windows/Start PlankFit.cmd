@echo off
title PlankFit: close this window to end it
cd /d "%~dp0"
"program\plankfit-page.exe" %*
if errorlevel 1 pause
