"""What somebody probably meant who took or typed a wrong value. Offered, never applied."""
